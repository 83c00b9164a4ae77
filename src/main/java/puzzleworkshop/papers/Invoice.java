package puzzleworkshop.papers;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.pricing.tax.VatSum;

/**
 * An issued invoice or credit note. It stands as it was issued: seller and customer in the words of that day.
 *
 * @param number such as 2026-0017, for a credit note C2026-0003; without gaps in its year
 * @param corrects the invoice a credit note belongs to
 * @param vat how much of the gross amount is tax
 * @param gross what is to be paid, or for a credit note what is taken back; not below zero
 * @param reason of a credit note
 */
public record Invoice(
        InvoiceId id,
        Series series,
        String number,
        OrderId order,
        String orderNumber,
        Optional<InvoiceId> corrects,
        LocalDate issuedOn,
        LocalDate dueOn,
        String seller,
        String taxNumber,
        String customer,
        VatMode vatMode,
        VatRounding vatRounding,
        Money net,
        Money vat,
        Money gross,
        String reason,
        List<Line> lines) {

    /** Invoices and credit notes count in a series each. */
    public enum Series {
        INVOICE,
        CREDIT_NOTE;

        public String textKey() {
            return "papers.series." + name();
        }
    }

    /**
     * One line; net, vat and gross of all lines add up to the paper's.
     *
     * @param unitPrice as it was said, with or without tax
     */
    public record Line(
            String what, BigDecimal quantity, Money unitPrice, Percent vatRate, Money net, Money vat, Money gross) {}

    public Invoice {
        lines = List.copyOf(lines);
    }

    public Currency currency() {
        return gross.currency();
    }

    /** Net, tax and gross of each tax rate on it, lowest rate first. */
    public VatSum byRate() {
        Map<Percent, VatSum.OfRate> sums = new TreeMap<>();
        for (Line line : lines) {
            sums.merge(
                    line.vatRate(),
                    new VatSum.OfRate(line.vatRate(), line.net(), line.vat(), line.gross()),
                    VatSum.OfRate::plus);
        }
        return new VatSum(List.copyOf(sums.values()), vatMode, vatRounding, currency());
    }

    /** What it adds to what the customer owes: a credit note takes away. */
    public Money owed() {
        return series == Series.INVOICE ? gross : gross.negated();
    }
}
