package puzzleworkshop.pricing.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.pricing.rates.Source;

/**
 * One line of a cost sheet. A single line is quantity × rate; a line with lines beneath it is their sum. Amounts are not
 * rounded here; see {@link CostSheet#shownParts()}.
 *
 * @param part of the bar it belongs to
 * @param what it is, in words
 * @param quantity how many units; 1 for a sum
 * @param unit what the quantity counts
 * @param rate money for one unit
 * @param amount quantity × rate, exact
 * @param source where quantity and rate come from
 * @param lines the lines this one adds up; empty for a single line
 */
public record CostLine(
        CostPart part,
        Sentence what,
        BigDecimal quantity,
        CostUnit unit,
        Money rate,
        Money amount,
        Source source,
        List<CostLine> lines) {

    /** Digits kept of a measured quantity, so that the minutes of an hour lose nothing that could reach a minor unit. */
    private static final int QUANTITY_DIGITS = 12;

    public CostLine {
        lines = List.copyOf(lines);
    }

    /** A single line. */
    public static CostLine of(
            CostPart part, Sentence what, BigDecimal quantity, CostUnit unit, Money rate, Source source) {
        return new CostLine(part, what, quantity, unit, rate, rate.times(quantity), source, List.of());
    }

    /** A single line with a measured quantity. */
    public static CostLine of(CostPart part, Sentence what, double quantity, CostUnit unit, Money rate, Source source) {
        BigDecimal kept = BigDecimal.valueOf(quantity).setScale(QUANTITY_DIGITS, RoundingMode.HALF_UP);
        return of(part, what, kept.stripTrailingZeros(), unit, rate, source);
    }

    /** A line that opens to the given ones. */
    public static CostLine sum(CostPart part, Sentence what, Source source, List<CostLine> lines) {
        Money total = Money.sum(
                lines.stream().map(CostLine::amount).toList(),
                lines.getFirst().amount().currency());
        return new CostLine(part, what, BigDecimal.ONE, CostUnit.ORDER, total, total, source, lines);
    }
}
