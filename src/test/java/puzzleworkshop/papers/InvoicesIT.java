package puzzleworkshop.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.pricing.tax.VatRate;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.pricing.tax.VatSum;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.ReadPaper;
import puzzleworkshop.workshop.Stage;

@DatabaseTest
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class InvoicesIT {

    @Autowired
    Invoices invoices;

    @Autowired
    Receipts receipts;

    @Autowired
    MoneyPapers papers;

    @Autowired
    AccountantCsv csv;

    @Autowired
    Debts debts;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    DataSource dataSource;

    @Autowired
    private Orders orders;

    private final SoldOrders sold;
    private final LocalDate today = LocalDate.now();

    InvoicesIT(@Autowired BeanFactory beans) {
        this.sold = new SoldOrders(beans);
    }

    @BeforeEach
    void clean() {
        CleanDatabase.now(dataSource);
    }

    @Test
    void numbers_have_no_gap_when_many_invoice_at_once_and_some_give_up() throws Exception {
        List<Order> orders = IntStream.range(0, 24)
                .mapToObj(i -> sold.confirmed("Customer " + i, 1))
                .toList();
        List<Callable<Boolean>> clerks = new ArrayList<>();
        for (int i = 0; i < orders.size(); i++) {
            Order order = orders.get(i);
            boolean givesUp = i % 3 == 0;
            clerks.add(() -> transaction.execute(status -> {
                invoices.issue(BookingKey.fresh(), order.id(), "clerk");
                if (givesUp) {
                    status.setRollbackOnly();
                }
                return !givesUp;
            }));
        }
        long issued = 0;
        try (ExecutorService office = Executors.newFixedThreadPool(8)) {
            for (Future<Boolean> clerk : office.invokeAll(clerks)) {
                issued += clerk.get() ? 1 : 0;
            }
        }
        List<Integer> running = jdbc.sql("select running from invoice order by running")
                .query(Integer.class)
                .list();
        assertThat(issued).isEqualTo(16);
        assertThat(running)
                .containsExactlyElementsOf(IntStream.rangeClosed(1, 16).boxed().toList());
    }

    @Test
    void an_order_is_invoiced_once_until_it_is_credited() {
        Order order = sold.confirmed("Ada Reed", 25);
        Invoice invoice = invoices.issue(BookingKey.fresh(), order.id(), "mara");
        assertThat(invoice.gross().sameAs(order.price().gross())).isTrue();
        assertThatThrownBy(() -> invoices.issue(BookingKey.fresh(), order.id(), "mara"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("papers.invoice.stands");
        Invoice credit = invoices.credit(BookingKey.fresh(), invoice.id(), all(invoice), "wrong address", "mara");
        assertThat(credit.number()).isEqualTo("C" + today.getYear() + "-0001");
        assertThat(invoices.issue(BookingKey.fresh(), order.id(), "mara").number())
                .isEqualTo(today.getYear() + "-0002");
        assertThat(invoices.account(order.id()).invoiced().sameAs(order.price().gross()))
                .isTrue();
    }

    @Test
    void an_issued_invoice_cannot_be_changed_or_credited_beyond_its_amount() {
        Order order = sold.confirmed("Ada Reed", 1);
        Invoice invoice = invoices.issue(BookingKey.fresh(), order.id(), "mara");
        assertThatThrownBy(() ->
                        jdbc.sql("update invoice set customer = 'someone'").update())
                .hasMessageContaining("stands as it is");
        assertThatThrownBy(() -> jdbc.sql("delete from invoice_line").update()).hasMessageContaining("stands as it is");
        Money part = Money.of("5.00", "EUR");
        invoices.credit(BookingKey.fresh(), invoice.id(), Map.of(Percent.ZERO, part), "a corner was charred", "mara");
        assertThatThrownBy(() -> invoices.credit(BookingKey.fresh(), invoice.id(), all(invoice), "again", "mara"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("papers.credit.range");
    }

    @Test
    void the_database_refuses_a_paper_whose_lines_do_not_add_up() {
        Order order = sold.confirmed("Ada Reed", 1);
        assertThatThrownBy(() -> transaction.executeWithoutResult(status ->
                        jdbc.sql("""
                            insert into invoice (series, year, running, number, order_id, order_number, issued_on, due_on, seller,
                                tax_number, customer, vat_mode, vat_rounding, currency, net, vat, gross, who, issued_at)
                            values ('INVOICE', 2026, 0, '', :order, '', now(), now(), '', '', '', 'NONE', 'BY_TOTAL', 'EUR', 5, 0, 5, '', now())
                            """).param("order", order.id().value()).update()))
                .hasMessageContaining("do not add up");
    }

    @Test
    void deposit_part_payment_and_refund_leave_what_is_open() {
        Order order = sold.confirmed("Ada Reed", 1);
        Money gross = order.price().gross().rounded();
        Money ten = Money.of("10.00", "EUR");
        receipts.receive(BookingKey.fresh(), order.id(), ten, Payment.Way.CASH, today, "at the counter", "mara");
        invoices.issue(BookingKey.fresh(), order.id(), "mara");
        assertThat(invoices.account(order.id()).open().sameAs(gross.minus(ten))).isTrue();
        assertThat(debts.open())
                .singleElement()
                .satisfies(
                        debt -> assertThat(debt.open().sameAs(gross.minus(ten))).isTrue());
        receipts.receive(BookingKey.fresh(), order.id(), gross.minus(ten), Payment.Way.TRANSFER, today, "", "mara");
        assertThat(debts.open()).isEmpty();
        assertThatThrownBy(() -> receipts.refund(
                        BookingKey.fresh(), order.id(), gross.plus(ten), Payment.Way.CASH, today, "", "mara"))
                .isInstanceOf(Refused.class);
        receipts.refund(BookingKey.fresh(), order.id(), ten, Payment.Way.CASH, today, "late by a day", "mara");
        assertThat(invoices.account(order.id()).open().sameAs(ten)).isTrue();
        assertThat(invoices.account(order.id()).payments())
                .extracting(Payment::kind)
                .containsExactly(Payment.Kind.DEPOSIT, Payment.Kind.PAYMENT, Payment.Kind.REFUND);
    }

    @Test
    void an_order_that_is_handed_over_and_paid_in_full_is_closed_whichever_comes_last() {
        Order paidFirst = sold.confirmed("Ada Reed", 1);
        receiveAll(paidFirst);
        assertThat(stateOf(paidFirst)).isEqualTo(OrderState.CONFIRMED);
        handOver(paidFirst);
        assertThat(stateOf(paidFirst)).isEqualTo(OrderState.CLOSED);

        Order paidLast = sold.confirmed("Ben Ashby", 1);
        handOver(paidLast);
        assertThat(stateOf(paidLast)).isEqualTo(OrderState.HANDED_OVER);
        receiveAll(paidLast);
        assertThat(stateOf(paidLast)).isEqualTo(OrderState.CLOSED);

        Order paidTooMuch = sold.confirmed("Cleo Dunn", 1);
        handOver(paidTooMuch);
        Money ten = Money.of("10.00", "EUR");
        receipts.receiveKnowingly(
                BookingKey.fresh(),
                paidTooMuch.id(),
                paidTooMuch.price().gross().plus(ten),
                Payment.Way.CASH,
                today,
                "",
                "mara");
        assertThat(stateOf(paidTooMuch)).isEqualTo(OrderState.HANDED_OVER);
        receipts.refund(BookingKey.fresh(), paidTooMuch.id(), ten, Payment.Way.CASH, today, "", "mara");
        assertThat(stateOf(paidTooMuch)).isEqualTo(OrderState.CLOSED);
    }

    @Test
    void a_hand_over_that_closed_its_order_can_be_taken_back() {
        Order order = sold.confirmed("Ada Reed", 1);
        receiveAll(order);
        handOver(order);
        orders.sendBack(order.id(), Stage.HAND_OVER, Sentence.of("orders.history.reopened"), "mara");
        assertThat(stateOf(order)).isEqualTo(OrderState.CONFIRMED);
        orders.completeStage(order.id(), Stage.HAND_OVER, "mara");
        assertThat(stateOf(order)).isEqualTo(OrderState.CLOSED);
    }

    private void receiveAll(Order order) {
        receipts.receive(BookingKey.fresh(), order.id(), order.price().gross(), Payment.Way.CARD, today, "", "mara");
    }

    private void handOver(Order order) {
        // these orders have no picture to approve; money is what is looked at here
        JdbcClient.create(dataSource)
                .sql("update customer_order set approved_at = now(), approved_by = 'mara' where id = :id")
                .param("id", order.id().value())
                .update();
        for (Stage stage : Stage.values()) {
            orders.completeStage(order.id(), stage, "mara");
        }
    }

    private OrderState stateOf(Order order) {
        return orders.get(order.id()).state();
    }

    @Test
    void a_quote_cannot_be_invoiced() {
        Order quote = sold.quote("Ada Reed", 1, false, Percent.ZERO);
        assertThatThrownBy(() -> invoices.issue(BookingKey.fresh(), quote.id(), "mara"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not-confirmed");
    }

    @Test
    void the_accountants_lines_add_up_to_the_papers_whatever_the_tax_and_its_rounding() throws IOException {
        BigDecimal expected = BigDecimal.ZERO;
        BigDecimal expectedVat = BigDecimal.ZERO;
        for (VatMode mode : VatMode.values()) {
            for (VatRounding rounding : VatRounding.values()) {
                sold.vat(mode, rounding);
                Order order = sold.confirmed("=Ada; \"Reed\"", 7);
                Invoice invoice = invoices.issue(BookingKey.fresh(), order.id(), "mara");
                Invoice credit = invoices.credit(
                        BookingKey.fresh(),
                        invoice.id(),
                        Map.of(rate(invoice), Money.of("3.33", "EUR")),
                        "goodwill",
                        "mara");
                expected = expected.add(invoice.gross().amount())
                        .subtract(credit.gross().amount());
                expectedVat = expectedVat
                        .add(invoice.totals().vat().amount())
                        .subtract(credit.totals().vat().amount());
            }
        }
        StringWriter out = new StringWriter();
        csv.papers(today.minusDays(1), today.plusDays(1), out);
        List<CSVRecord> lines = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(out.toString()))
                .getRecords();
        assertThat(sum(lines, "gross")).isEqualByComparingTo(expected);
        assertThat(sum(lines, "vat")).isEqualByComparingTo(expectedVat);
        assertThat(sum(lines, "net")).isEqualByComparingTo(expected.subtract(expectedVat));
        assertThat(lines.getFirst().get("customer")).isEqualTo("'=Ada; \"Reed\"");
    }

    @Test
    void an_order_with_two_tax_rates_is_invoiced_credited_and_exported_rate_by_rate() throws IOException {
        sold.rates(new VatRates(VatRate.REDUCED, VatRate.STANDARD));
        Map<String, BigDecimal> expected = new TreeMap<>();
        for (VatMode mode : List.of(VatMode.INCLUDED, VatMode.ON_TOP)) {
            for (VatRounding rounding : VatRounding.values()) {
                sold.vat(mode, rounding);
                Order order = sold.confirmed("Ada Reed", 3);
                Invoice invoice = invoices.issue(BookingKey.fresh(), order.id(), "mara");
                assertThat(invoice.byRate().perRate())
                        .extracting(VatSum.OfRate::rate)
                        .containsExactly(Percent.of(10), Percent.of(20));
                Invoice credit = invoices.credit(
                        BookingKey.fresh(),
                        invoice.id(),
                        Map.of(Percent.of(20), Money.of("2.40", "EUR")),
                        "came late",
                        "mara");
                assertThat(credit.lines()).singleElement().satisfies(line -> {
                    assertThat(line.vatRate()).isEqualTo(Percent.of(20));
                    assertThat(line.vat().amount()).isEqualByComparingTo("0.40");
                });
                invoice.byRate()
                        .perRate()
                        .forEach(rate -> expected.merge(
                                rate.rate().hundredths().toPlainString(),
                                rate.vat().amount(),
                                BigDecimal::add));
                expected.merge("20", credit.totals().vat().amount().negate(), BigDecimal::add);
                assertThatThrownBy(() -> invoices.credit(
                                BookingKey.fresh(),
                                invoice.id(),
                                Map.of(
                                        Percent.of(20),
                                        invoice.byRate().perRate().getLast().gross()),
                                "again",
                                "mara"))
                        .isInstanceOf(Refused.class)
                        .hasMessageContaining("papers.credit.range");
            }
        }
        StringWriter out = new StringWriter();
        csv.papers(today.minusDays(1), today.plusDays(1), out);
        List<CSVRecord> lines = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(out.toString()))
                .getRecords();
        for (String rate : List.of("10", "20")) {
            List<CSVRecord> ofRate = lines.stream()
                    .filter(line -> line.get("vat_percent").equals(rate))
                    .toList();
            assertThat(sum(ofRate, "vat")).isEqualByComparingTo(expected.get(rate));
        }
    }

    @Test
    void the_database_refuses_a_credit_beyond_what_was_invoiced_at_a_rate() {
        sold.rates(new VatRates(VatRate.REDUCED, VatRate.STANDARD));
        sold.vat(VatMode.INCLUDED, VatRounding.BY_TOTAL);
        Invoice invoice =
                invoices.issue(BookingKey.fresh(), sold.confirmed("Ada Reed", 3).id(), "mara");
        assertThatThrownBy(() -> transaction.executeWithoutResult(status -> {
                    long id = jdbc.sql("""
                        insert into invoice (series, year, running, number, order_id, order_number, corrects, issued_on,
                            due_on, seller, tax_number, customer, vat_mode, vat_rounding, currency, net, vat, gross, who,
                            issued_at)
                        values ('CREDIT_NOTE', 2026, 0, '', :order, '', :corrects, now(), now(), '', '', '', 'INCLUDED',
                            'BY_TOTAL', 'EUR', 10, 2, 12, '', now()) returning id
                        """)
                            .param("order", invoice.order().id().value())
                            .param("corrects", invoice.id().value())
                            .query(Long.class)
                            .single();
                    jdbc.sql("""
                        insert into invoice_line (invoice_id, position, what, quantity, unit_price, vat_percent, net, vat, gross)
                        values (:id, 1, '', 1, 12, 20, 10, 2, 12)
                        """).param("id", id).update();
                }))
                .hasMessageContaining("credited beyond what was invoiced at 20");
    }

    @Test
    void quote_invoice_and_credit_note_are_readable_pdfs_with_their_amounts() throws IOException {
        sold.vat(VatMode.INCLUDED, VatRounding.BY_TOTAL);
        invoices.save(new PaperSettings(
                "NH 402 881 17",
                "Harbour Savings Bank\nAccount 00 4711 0815",
                "Half is paid when you say yes.",
                "Thank you for your order.",
                14,
                new byte[0]));
        Order quote = sold.quote("Ada Reed", 25, true, Percent.of(5));
        String quoted = text(keep("quote", papers.quote(quote.id())));
        assertThat(quoted).contains("Quote " + quote.number(), "Discount 5 %", "Half is paid", "page 1 of 1");
        Order order = sold.confirmed(ReadPaper.MANY_LETTERS, 2);
        receipts.receive(BookingKey.fresh(), order.id(), Money.of("20.00", "EUR"), Payment.Way.CASH, today, "", "mara");
        Invoice invoice = invoices.issue(BookingKey.fresh(), order.id(), "mara");
        String invoiced = text(keep("invoice", papers.issued(invoice.id())));
        assertThat(invoiced)
                .contains("Invoice " + invoice.number(), "NH 402 881 17", "VAT 20 %", "Still to pay", "Quay Street 4");
        assertThat(invoiced.replaceAll("\\s+", " ")).contains(ReadPaper.MANY_LETTERS);
        Invoice credit = invoices.credit(
                BookingKey.fresh(),
                invoice.id(),
                Map.of(rate(invoice), Money.of("6.00", "EUR")),
                "one corner was charred",
                "mara");
        assertThat(text(keep("credit", papers.issued(credit.id()))))
                .contains("Credit note C", "one corner was charred");
    }

    @Test
    void an_invoice_asks_for_payment_only_while_something_is_owed() {
        invoices.save(new PaperSettings("", "Harbour Savings Bank", "", "", 14, new byte[0]));
        Invoice open =
                invoices.issue(BookingKey.fresh(), sold.confirmed("Ada Reed", 1).id(), "mara");
        assertThat(text(papers.issued(open.id()))).contains("Pay by", "Harbour Savings Bank");
        Order paid = sold.confirmed("Ada Reed", 1);
        receiveAll(paid);
        Invoice settled = invoices.issue(BookingKey.fresh(), paid.id(), "mara");
        assertThat(text(papers.issued(settled.id())))
                .contains("Received, thank you")
                .doesNotContain("Pay by", "Harbour Savings Bank");
    }

    @Test
    void an_issued_paper_is_given_again_byte_for_byte_whatever_came_since() throws IOException {
        sold.vat(VatMode.INCLUDED, VatRounding.BY_TOTAL);
        Order order = sold.confirmed("Ada Reed", 1);
        receive(order, "20.00");
        Invoice invoice = invoices.issue(BookingKey.fresh(), order.id(), "mara");
        byte[] issued = papers.issued(invoice.id());
        Invoice credit = invoices.credit(
                BookingKey.fresh(),
                invoice.id(),
                Map.of(rate(invoice), Money.of("10.00", "EUR")),
                "one corner was charred",
                "mara");
        byte[] credited = papers.issued(credit.id());
        receive(order, "5.00");
        invoices.save(new PaperSettings("other", "Another Bank", "", "Other terms", 3, new byte[0]));
        assertThat(papers.issued(invoice.id())).isEqualTo(issued);
        assertThat(papers.issued(credit.id())).isEqualTo(credited);
        // what stands on it adds up: the total, what had come when it was issued, and the difference
        Money left = invoice.gross().minus(Money.of("20.00", "EUR"));
        assertThat(text(issued).replace(",", "")).contains(left.amount().toPlainString());
        String statement = text(keep("statement", papers.statement(order.id())));
        Money open = left.minus(Money.of("15.00", "EUR"));
        assertThat(statement.replace(",", ""))
                .contains("Statement for order " + order.number(), open.amount().toPlainString(), credit.number());
        assertThat(invoices.account(order.id()).open()).isEqualTo(open);
    }

    @Test
    void the_database_refuses_to_change_a_paper_that_was_given() {
        Invoice invoice =
                invoices.issue(BookingKey.fresh(), sold.confirmed("Ada Reed", 1).id(), "mara");
        for (String change : List.of("update kept_paper set says = ''", "delete from kept_paper")) {
            assertThatThrownBy(() -> jdbc.sql(change).update()).hasMessageContaining("stands as it is");
        }
        assertThatThrownBy(() -> jdbc.sql("""
                            insert into kept_paper (kind, order_id, running, about, says, content, sha256, late, kept_at, kept_by)
                            values ('QUOTE', :order, 1, '', '', 'x', sha256('y'), false, now(), 'mara')
                            """)
                        .param("order", invoice.order().id().value())
                        .update())
                .hasMessageContaining("kept_paper_sha256");
    }

    @Test
    void an_invoice_from_before_papers_were_kept_is_set_once_as_it_was_and_says_so() {
        Order order = sold.confirmed("Ada Reed", 1);
        Invoice invoice = invoices.issue(BookingKey.fresh(), order.id(), "mara");
        transaction.executeWithoutResult(status -> {
            jdbc.sql("alter table kept_paper disable trigger user").update();
            jdbc.sql("delete from kept_paper").update();
            jdbc.sql("alter table kept_paper enable trigger user").update();
        });
        byte[] late = papers.issued(invoice.id());
        assertThat(text(late)).contains("did not keep its copy").doesNotContain("Received, thank you");
        receive(order, "5.00");
        assertThat(papers.issued(invoice.id())).isEqualTo(late);
    }

    @Test
    void a_quote_stands_until_the_offer_changes_and_for_good_once_it_was_taken() {
        Order quote = sold.quote("Ada Reed", 1, false, Percent.ZERO);
        byte[] first = papers.quote(quote.id());
        invoices.save(new PaperSettings("", "", "Other terms", "", 14, new byte[0]));
        assertThat(papers.quote(quote.id())).isEqualTo(first);
        jdbc.sql("update customer_order set valid_until = valid_until + 1 where id = :id")
                .param("id", quote.id().value())
                .update();
        byte[] second = papers.quote(quote.id());
        assertThat(second).isNotEqualTo(first);
        assertThat(text(second)).contains("Quote " + quote.number() + ", version 2");
        assertThat(papers.quotes(quote.id())).hasSize(2);
        orders.confirm(quote.id(), today.plusDays(30), "mara");
        assertThat(papers.quote(quote.id())).isEqualTo(second);
    }

    @Test
    void before_an_invoice_goes_out_what_is_missing_is_said_and_a_preview_takes_no_number() throws IOException {
        sold.vat(VatMode.INCLUDED, VatRounding.BY_TOTAL);
        invoices.save(new PaperSettings("", "", "", "", 14, new byte[0]));
        Order order = sold.confirmed("Ada Reed", 1);
        assertThat(invoices.missing(order.id()))
                .extracting(Sentence::key)
                .contains("papers.missing.stage", "papers.missing.tax-number", "papers.missing.bank");
        assertThat(text(keep("preview", papers.preview(order.id())))).contains("Invoice (preview)", "is no invoice");
        assertThat(invoices.account(order.id()).papers()).isEmpty();
        assertThat(invoices.issue(BookingKey.fresh(), order.id(), "mara").number())
                .isEqualTo(today.getYear() + "-0001");
    }

    @Test
    void a_mistyped_payment_is_taken_back_and_both_lines_stay() {
        Order order = sold.confirmed("Ada Reed", 1);
        Money gross = order.price().gross().rounded();
        assertThatThrownBy(() -> receive(order, "99999999.00")).isInstanceOf(FarOff.class);
        receipts.receiveKnowingly(
                BookingKey.fresh(), order.id(), Money.of("99999999.00", "EUR"), Payment.Way.CASH, today, "", "mara");
        Payment wrong = invoices.account(order.id()).payments().getFirst();
        receipts.takeBack(BookingKey.fresh(), order.id(), wrong.number(), "a key stuck", "mara");
        OrderAccount account = invoices.account(order.id());
        assertThat(account.payments()).hasSize(2);
        assertThat(account.isTakenBack(wrong)).isTrue();
        assertThat(account.open().rounded()).isEqualTo(gross);
        assertThatThrownBy(() -> receipts.takeBack(BookingKey.fresh(), order.id(), wrong.number(), "again", "mara"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("take-back.done");
        assertThat(debts.open())
                .singleElement()
                .satisfies(debt -> assertThat(debt.open()).isEqualTo(gross));
    }

    @Test
    void money_that_was_given_back_keeps_the_payment_it_came_from() {
        Order order = sold.confirmed("Ada Reed", 1);
        receive(order, "10.00");
        receipts.refund(BookingKey.fresh(), order.id(), Money.of("4.00", "EUR"), Payment.Way.CASH, today, "", "mara");
        List<Payment> lines = invoices.account(order.id()).payments();
        assertThatThrownBy(() -> receipts.takeBack(
                        BookingKey.fresh(), order.id(), lines.getFirst().number(), "never came", "mara"))
                .hasMessageContaining("take-back.below");
        receipts.takeBack(BookingKey.fresh(), order.id(), lines.getLast().number(), "not given", "mara");
        receipts.takeBack(BookingKey.fresh(), order.id(), lines.getFirst().number(), "never came", "mara");
        assertThat(invoices.account(order.id()).received().isZero()).isTrue();
    }

    private void receive(Order order, String amount) {
        receipts.receive(BookingKey.fresh(), order.id(), Money.of(amount, "EUR"), Payment.Way.CASH, today, "", "mara");
    }

    private static Map<Percent, Money> all(Invoice invoice) {
        return invoice.byRate().perRate().stream().collect(Collectors.toMap(VatSum.OfRate::rate, VatSum.OfRate::gross));
    }

    private static Percent rate(Invoice invoice) {
        return invoice.lines().getFirst().vatRate();
    }

    private static BigDecimal sum(List<CSVRecord> lines, String column) {
        return lines.stream().map(line -> new BigDecimal(line.get(column))).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static String text(byte[] pdf) {
        return ReadPaper.text(pdf);
    }

    /** Left in the build folder for a look. */
    private static byte[] keep(String name, byte[] pdf) throws IOException {
        Files.createDirectories(Path.of("target", "papers"));
        Files.write(Path.of("target", "papers", name + ".pdf"), pdf);
        return pdf;
    }
}
