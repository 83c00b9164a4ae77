package puzzleworkshop.papers;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.papers.Invoice.Line;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.tax.VatSum;

/**
 * The lines of a credit note. An invoice taken back whole is mirrored line by line. A part of it becomes one line for
 * each tax rate; its tax is the same share of what is left as the amount, so that notes which together take back a whole
 * invoice take back its tax to the minor unit too.
 */
final class CreditLines {

    private CreditLines() {}

    /**
     * @param rest of the invoice, for each of its rates
     * @param amounts gross, by rate
     * @param words for a line that takes back a part
     * @throws Refused when nothing is credited, or more than is left of a rate
     */
    static List<Line> of(Invoice invoice, List<VatSum.OfRate> rest, Map<Percent, Money> amounts, String words) {
        boolean known = amounts.keySet().stream()
                .allMatch(rate -> rest.stream().anyMatch(of -> of.rate().equals(rate)));
        boolean some = amounts.values().stream().anyMatch(Money::isPositive);
        if (!known || !some || amounts.values().stream().anyMatch(Money::isNegative)) {
            throw new Refused("papers.credit.some");
        }
        List<Line> parts = new ArrayList<>();
        boolean whole = true;
        for (VatSum.OfRate left : rest) {
            Money amount = amounts.getOrDefault(left.rate(), Money.zero(invoice.currency()))
                    .rounded();
            if (amount.compareTo(left.gross()) > 0) {
                throw new Refused("papers.credit.range", left.gross(), left.rate());
            }
            whole &= amount.sameAs(left.gross());
            if (amount.isPositive()) {
                parts.add(part(left, amount, words, invoice.totals().mode()));
            }
        }
        boolean untouched = Money.sum(rest.stream().map(VatSum.OfRate::gross).toList(), invoice.currency())
                .sameAs(invoice.gross());
        return whole && untouched ? invoice.lines() : parts;
    }

    private static Line part(VatSum.OfRate left, Money amount, String words, VatMode mode) {
        BigDecimal share = amount.amount().divide(left.gross().amount(), Money.PRECISE);
        Money tax = left.vat().times(share).rounded();
        Money net = amount.minus(tax);
        return new Line(words, BigDecimal.ONE, mode == VatMode.ON_TOP ? net : amount, left.rate(), net, tax, amount);
    }
}
