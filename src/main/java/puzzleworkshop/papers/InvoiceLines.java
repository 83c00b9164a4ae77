package puzzleworkshop.papers;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.stream.IntStream;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.papers.Invoice.Line;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.tax.VatSum;

/**
 * Splits the tax of a whole paper over its lines. Rounded by line each line keeps its own tax; rounded on the total, each
 * line gets its own rounded tax and the difference to the total goes, minor unit by minor unit, to the largest lines, so
 * that lines and total always agree.
 */
final class InvoiceLines {

    /** A line as it is said to the customer; the amount is quantity × unit price, rounded, or a discount below zero. */
    record Said(String what, BigDecimal quantity, Money unitPrice, Percent rate) {

        Money amount() {
            return unitPrice.times(quantity).rounded();
        }
    }

    private InvoiceLines() {}

    /** @param whole net, tax and gross of the same lines, as they were promised to the customer */
    static List<Line> of(List<Said> said, VatSum whole) {
        VatMode mode = whole.mode();
        Currency currency = whole.currency();
        List<Money> taxes = new ArrayList<>(said.stream()
                .map(line ->
                        mode == VatMode.NONE ? Money.zero(currency) : VatSum.taxOf(line.amount(), line.rate(), mode))
                .toList());
        for (VatSum.OfRate ofRate : whole.perRate()) {
            List<Integer> members = IntStream.range(0, said.size())
                    .boxed()
                    .filter(i -> mode == VatMode.NONE || said.get(i).rate().equals(ofRate.rate()))
                    .sorted((a, b) -> said.get(b)
                            .amount()
                            .amount()
                            .abs()
                            .compareTo(said.get(a).amount().amount().abs()))
                    .toList();
            level(taxes, members, ofRate.vat());
        }
        return IntStream.range(0, said.size())
                .mapToObj(i -> line(said.get(i), taxes.get(i), mode))
                .toList();
    }

    private static void level(List<Money> taxes, List<Integer> members, Money wanted) {
        Money now = Money.sum(members.stream().map(taxes::get).toList(), wanted.currency());
        Money unit = Money.ofMinor(wanted.compareTo(now) < 0 ? -1 : 1, wanted.currency());
        for (int n = 0; !now.sameAs(wanted); n++) {
            int i = members.get(n % members.size());
            taxes.set(i, taxes.get(i).plus(unit));
            now = now.plus(unit);
        }
    }

    private static Line line(Said said, Money tax, VatMode mode) {
        Money amount = said.amount();
        Money net = mode == VatMode.INCLUDED ? amount.minus(tax) : amount;
        Percent rate = mode == VatMode.NONE ? Percent.ZERO : said.rate();
        return new Line(said.what(), said.quantity(), said.unitPrice(), rate, net, tax, net.plus(tax));
    }
}
