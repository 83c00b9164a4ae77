package puzzleworkshop.insights;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Consumer;
import javax.sql.DataSource;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.AccountantCsv;
import puzzleworkshop.papers.Debts;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.InvoiceId;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.MoneyPapers;
import puzzleworkshop.papers.OrderAccount;
import puzzleworkshop.papers.Receipts;
import puzzleworkshop.papers.SoldOrders;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.pricing.tax.VatSum;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.Seeds;
import puzzleworkshop.workshop.Stage;

/**
 * Whatever was invoiced, credited, paid, given back and taken back, in whatever order: figures, orders, debts and the
 * accountant's lines say the same, to the cent, and issued papers keep their bytes. The sums are worked out here from the
 * accountant's lines alone (double-entry's own check: what one book says the other must).
 */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class BooksAgreeIT {

    private static final int ORDERS = 14;
    private static final int STEPS = 220;

    @Autowired
    BeanFactory beans;

    @Autowired
    DataSource dataSource;

    @Autowired
    JdbcClient jdbc;

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
    Insights insights;

    @Autowired
    Orders orders;

    private final LocalDate today = LocalDate.now();
    private final Map<InvoiceId, byte[]> issued = new HashMap<>();

    @Test
    void after_any_history_all_books_say_the_same_to_the_cent() throws IOException {
        long seed = Seeds.from(26);
        CleanDatabase.now(dataSource);
        Random dice = new Random(seed);
        SoldOrders sold = new SoldOrders(beans);
        List<Order> all = new ArrayList<>();
        for (int i = 0; i < ORDERS; i++) {
            sold.vat(VatMode.values()[dice.nextInt(3)], VatRounding.values()[dice.nextInt(2)]);
            all.add(sold.confirmed("Customer " + i, 1 + dice.nextInt(5)));
        }
        int booked = 0;
        for (int i = 0; i < STEPS; i++) {
            booked += step(all.get(dice.nextInt(ORDERS)).id(), dice) ? 1 : 0;
            if (i % 55 == 54) {
                agree("seed " + seed + ", after step " + i, all);
            }
        }
        assertThat(booked).as("bookings, seed " + seed).isGreaterThan(STEPS / 4);
    }

    /** One thing that may happen; false when it was refused, as it rightly is now and then. */
    private boolean step(OrderId id, Random dice) {
        List<Consumer<OrderId>> may = List.of(
                order -> issued.put(issue(order).id(), new byte[0]),
                order -> credit(order, dice),
                order -> credit(order, dice),
                order -> receipts.receive(key(), order, amount(dice), Payment.Way.CASH, day(dice), "", "mara"),
                order -> receipts.receiveKnowingly(key(), order, amount(dice), Payment.Way.CARD, day(dice), "", "mara"),
                order -> receipts.refund(key(), order, amount(dice), Payment.Way.TRANSFER, day(dice), "", "mara"),
                order -> takeBack(order, dice),
                order -> handOver(order));
        try {
            may.get(dice.nextInt(may.size())).accept(id);
            return true;
        } catch (Refused expected) {
            return false;
        }
    }

    private Invoice issue(OrderId order) {
        return invoices.issue(key(), order, "mara");
    }

    private void credit(OrderId order, Random dice) {
        OrderAccount account = invoices.account(order);
        Invoice invoice = account.standing().orElseThrow(() -> new Refused("papers.unknown"));
        Map<Percent, Money> amounts = new HashMap<>();
        for (VatSum.OfRate rest : account.restByRate(invoice)) {
            boolean whole = dice.nextInt(3) == 0;
            amounts.put(
                    rest.rate(),
                    whole ? rest.gross() : rest.gross().times(dice.nextDouble()).rounded());
        }
        invoices.credit(key(), invoice.id(), amounts, "a corner was charred", "mara");
    }

    private void takeBack(OrderId order, Random dice) {
        List<Payment> lines = invoices.account(order).payments();
        if (lines.isEmpty()) {
            throw new Refused("payments.take-back.unknown");
        }
        receipts.takeBack(key(), order, lines.get(dice.nextInt(lines.size())).number(), "mistyped", "mara");
    }

    private void handOver(OrderId order) {
        if (orders.get(order).state() != OrderState.CONFIRMED) {
            throw new Refused("orders.stage.not-back");
        }
        // these orders have no picture to approve; money is what is looked at here
        jdbc.sql("update customer_order set approved_at = now(), approved_by = 'mara' where id = :id")
                .param("id", order.value())
                .update();
        for (Stage stage : Stage.values()) {
            orders.completeStage(order, stage, "mara");
        }
    }

    private void agree(String when, List<Order> all) throws IOException {
        LocalDate from = today.minusDays(30);
        StringWriter paperLines = new StringWriter();
        csv.papers(from, today.plusDays(1), paperLines);
        StringWriter paymentLines = new StringWriter();
        csv.payments(from, today.plusDays(1), paymentLines);
        Map<String, BigDecimal> gross = sums(paperLines, "gross");
        Map<String, BigDecimal> net = sums(paperLines, "net");
        Map<String, BigDecimal> paid = sums(paymentLines, "amount");
        Map<String, Money> owed = new HashMap<>();
        debts.open().forEach(debt -> owed.put(debt.number(), debt.open()));
        BigDecimal soldByTheCsv = BigDecimal.ZERO;
        List<FinishedOrder> finished =
                insights.since(YearMonth.from(today).minusMonths(1)).finished();
        for (Order order : all) {
            String which = when + ", order " + order.number();
            OrderAccount account = invoices.account(order.id());
            boolean invoiced = gross.containsKey(order.number());
            BigDecimal due =
                    invoiced ? gross.get(order.number()) : order.price().gross().amount();
            BigDecimal received = paid.getOrDefault(order.number(), BigDecimal.ZERO);
            assertThat(account.due().amount()).as(which).isEqualByComparingTo(due);
            assertThat(account.received().amount()).as(which).isEqualByComparingTo(received);
            assertThat(account.open().amount()).as(which).isEqualByComparingTo(due.subtract(received));
            assertThat(account.received().isNegative()).as(which).isFalse();
            Money debt = owed.getOrDefault(
                    order.number(), Money.zero(account.agreed().currency()));
            assertThat(debt.amount()).as(which + ", debts").isEqualByComparingTo(due.subtract(received));
            if (!account.entries().isEmpty()) {
                assertThat(account.entries().getLast().balance().amount())
                        .as(which + ", statement")
                        .isEqualByComparingTo(due.subtract(received));
            }
            BigDecimal soldFor =
                    invoiced ? net.get(order.number()) : order.price().net().amount();
            assertThat(insights.outcome(order.id()).orElseThrow().net().amount())
                    .as(which + ", what it earned")
                    .isEqualByComparingTo(soldFor);
            boolean left = finished.stream().anyMatch(one -> one.id().equals(order.id()));
            soldByTheCsv = left ? soldByTheCsv.add(soldFor) : soldByTheCsv;
            OrderState state = orders.get(order.id()).state();
            assertThat(state == OrderState.CLOSED)
                    .as(which + ", closed")
                    .isEqualTo(left && account.open().isZero());
        }
        Money byMonth = insights.byMonth(finished, YearMonth.from(today).minusMonths(1)).stream()
                .map(PeriodFigures::net)
                .reduce(Money::plus)
                .orElseThrow();
        assertThat(byMonth.amount()).as(when + ", figures").isEqualByComparingTo(soldByTheCsv);
        for (InvoiceId paper : issued.keySet()) {
            byte[] now = papers.issued(paper);
            byte[] before = issued.put(paper, now);
            assertThat(before.length == 0 || java.util.Arrays.equals(before, now))
                    .as(when + ", paper " + paper)
                    .isTrue();
        }
    }

    private static Map<String, BigDecimal> sums(StringWriter lines, String column) throws IOException {
        Map<String, BigDecimal> sums = new HashMap<>();
        for (CSVRecord line : CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(lines.toString()))) {
            sums.merge(line.get("order"), new BigDecimal(line.get(column)), BigDecimal::add);
        }
        return sums;
    }

    private LocalDate day(Random dice) {
        return today.minusDays(dice.nextInt(20));
    }

    private static Money amount(Random dice) {
        return Money.ofMinor(1 + dice.nextInt(12_000), java.util.Currency.getInstance("EUR"));
    }

    private static BookingKey key() {
        return BookingKey.fresh();
    }
}
