package puzzleworkshop.papers;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.CsvCell;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.payments.Payments;

/**
 * What the accountant gets for a period: every line of every issued paper with net, tax and gross, credit notes below
 * zero, so that the columns add up to the papers. Plain numbers with a point, days as ISO 8601, UTF-8, separators and
 * quotes as RFC 4180 has them. Text that a spreadsheet would take for a formula gets an apostrophe in front.
 */
@Service
public class AccountantCsv {

    private static final String[] LINE_HEAD = {
        "paper",
        "number",
        "issued_on",
        "due_on",
        "corrects",
        "order",
        "customer",
        "line",
        "what",
        "quantity",
        "vat_percent",
        "net",
        "vat",
        "gross",
        "currency"
    };
    private static final String[] PAYMENT_HEAD = {"paid_on", "order", "kind", "way", "amount", "currency", "note"};

    private final Invoices invoices;
    private final Payments payments;
    private final Orders orders;

    AccountantCsv(Invoices invoices, Payments payments, Orders orders) {
        this.invoices = invoices;
        this.payments = payments;
        this.orders = orders;
    }

    /** Lines of the papers issued in a period, both days included. */
    @Transactional(readOnly = true)
    public void papers(LocalDate from, LocalDate to, Writer out) {
        List<Invoice> issued = invoices.issued(from, to);
        try (CSVPrinter csv = new CSVPrinter(
                out, CSVFormat.RFC4180.builder().setHeader(LINE_HEAD).get())) {
            for (Invoice paper : issued) {
                Optional<String> corrects =
                        paper.corrects().flatMap(invoices::find).map(Invoice::number);
                int position = 1;
                for (Invoice.Line line : paper.lines()) {
                    csv.printRecord(
                            paper.series().name().toLowerCase(Locale.ROOT),
                            CsvCell.guarded(paper.number()),
                            paper.issuedOn(),
                            paper.dueOn(),
                            CsvCell.guarded(corrects.orElse("")),
                            CsvCell.guarded(paper.order().number()),
                            CsvCell.guarded(paper.parties()
                                    .customer()
                                    .lines()
                                    .findFirst()
                                    .orElse("")),
                            position++,
                            CsvCell.guarded(line.what()),
                            line.quantity().toPlainString(),
                            line.vatRate().hundredths().toPlainString(),
                            signed(paper, line.net()),
                            signed(paper, line.vat()),
                            signed(paper, line.gross()),
                            paper.currency().getCurrencyCode());
                }
            }
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    /** Money received and given back in a period, refunds below zero. */
    @Transactional(readOnly = true)
    public void payments(LocalDate from, LocalDate to, Writer out) {
        try (CSVPrinter csv = new CSVPrinter(
                out, CSVFormat.RFC4180.builder().setHeader(PAYMENT_HEAD).get())) {
            for (Payment payment : payments.between(from, to)) {
                csv.printRecord(
                        payment.paidOn(),
                        orders.get(payment.order()).number(),
                        payment.kind().name().toLowerCase(Locale.ROOT),
                        payment.way().name().toLowerCase(Locale.ROOT),
                        plain(payment.received()),
                        payment.amount().currency().getCurrencyCode(),
                        CsvCell.guarded(payment.note()));
            }
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    private static BigDecimal signed(Invoice paper, Money amount) {
        return plain(paper.series() == Invoice.Series.INVOICE ? amount : amount.negated());
    }

    private static BigDecimal plain(Money amount) {
        return amount.rounded().amount();
    }
}
