package puzzleworkshop.papers;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.pricing.tax.VatSum;

/**
 * An issued invoice or credit note. It stands as it was issued: seller and customer in the words of that day.
 *
 * @param number such as 2026-0017, for a credit note C2026-0003; without gaps in its year
 * @param correction of a credit note: what it takes back and why; empty for an invoice
 * @param totals what is to be paid, or for a credit note what is taken back
 */
public record Invoice(
        InvoiceId id,
        Series series,
        String number,
        OrderRef order,
        Optional<Correction> correction,
        LocalDate issuedOn,
        LocalDate dueOn,
        Parties parties,
        Totals totals,
        List<Line> lines) {

    /** Invoices and credit notes count in a series each. */
    public enum Series {
        INVOICE,
        CREDIT_NOTE;

        public String textKey() {
            return "papers.series." + name();
        }
    }

    /** The invoice a credit note belongs to, and the reason that stands on it. */
    public record Correction(InvoiceId of, String reason) {}

    /** Who asks and who pays, as the paper says it: name and address over several lines; the tax number may be empty. */
    public record Parties(String seller, String taxNumber, String customer) {}

    /**
     * What the lines come to.
     *
     * @param vat how much of the gross amount is tax
     * @param gross not below zero
     * @param mode whether prices on it were said with tax or without
     * @param rounding of the tax: by line or by the sum of a rate
     */
    public record Totals(Money net, Money vat, Money gross, VatMode mode, VatRounding rounding) {

        static Totals of(List<Line> lines, VatMode mode, VatRounding rounding, Currency currency) {
            return new Totals(
                    sum(lines, Line::net, currency),
                    sum(lines, Line::vat, currency),
                    sum(lines, Line::gross, currency),
                    mode,
                    rounding);
        }

        private static Money sum(List<Line> lines, Function<Line, Money> part, Currency currency) {
            return Money.sum(lines.stream().map(part).toList(), currency);
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

    /** The same paper with these lines on it. */
    Invoice with(List<Line> lines) {
        return new Invoice(id, series, number, order, correction, issuedOn, dueOn, parties, totals, lines);
    }

    public Currency currency() {
        return gross().currency();
    }

    /** What is to be paid, or for a credit note what is taken back. */
    public Money gross() {
        return totals.gross();
    }

    /** The invoice a credit note takes back from. */
    public Optional<InvoiceId> corrects() {
        return correction.map(Correction::of);
    }

    /** Why a credit note was issued; empty on an invoice. */
    public String reason() {
        return correction.map(Correction::reason).orElse("");
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
        return new VatSum(List.copyOf(sums.values()), totals.mode(), totals.rounding(), currency());
    }

    /** What it adds to what the customer owes: a credit note takes away. */
    public Money owed() {
        return series == Series.INVOICE ? gross() : gross().negated();
    }
}
