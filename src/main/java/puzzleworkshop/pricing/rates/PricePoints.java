package puzzleworkshop.pricing.rates;

import java.math.BigDecimal;
import java.math.RoundingMode;
import puzzleworkshop.measure.Money;

/**
 * Prices as people like to read them: every step, with a chosen ending. Step 1 and ending 0.90 gives 12.90, 13.90…;
 * step 5 and ending 0 gives 15, 20…
 *
 * @param step distance between two price points, above zero
 * @param ending added to a multiple of the step; from 0 to below the step
 */
public record PricePoints(BigDecimal step, BigDecimal ending) {

    public PricePoints {
        if (step.signum() <= 0 || ending.signum() < 0 || ending.compareTo(step) >= 0) {
            throw new IllegalArgumentException(
                    "A price ending lies from 0 to below its step, not " + ending + " of " + step);
        }
        step = plain(step);
        ending = plain(ending);
    }

    /** Without needless noughts, so that the same points are equal however they were written. */
    private static BigDecimal plain(BigDecimal amount) {
        BigDecimal bare = amount.stripTrailingZeros();
        return bare.scale() < 0 ? bare.setScale(0) : bare;
    }

    /** Every payable amount is a price point. */
    public static PricePoints everyMinorUnit(java.util.Currency currency) {
        return new PricePoints(BigDecimal.ONE.movePointLeft(currency.getDefaultFractionDigits()), BigDecimal.ZERO);
    }

    public static PricePoints of(String step, String ending) {
        return new PricePoints(new BigDecimal(step), new BigDecimal(ending));
    }

    /** The lowest price point that is not below the given price; never below zero. */
    public Money atOrAbove(Money price) {
        BigDecimal steps = price.amount().max(BigDecimal.ZERO).subtract(ending).divide(step, 0, RoundingMode.CEILING);
        return Money.of(steps.multiply(step).add(ending), price.currency()).rounded(RoundingMode.UP);
    }

    /** The price point after this one. */
    public Money after(Money point) {
        return Money.of(point.amount().add(step), point.currency());
    }
}
