package puzzleworkshop.pricing;

import java.math.RoundingMode;
import java.util.OptionalLong;
import puzzleworkshop.measure.Money;

/**
 * How many puzzles a month pay for what the month costs anyway: fixed ÷ (price − variable), rounded up, because a third
 * of a puzzle cannot be sold. Source: contribution margin, any cost accounting textbook.
 */
public final class BreakEven {

    private BreakEven() {}

    /**
     * @param fixed for the period: rent, insurance, subscriptions; with a target profit added when one is wanted
     * @param price net for one
     * @param variable what one more costs
     * @return how many; nothing when one more loses money or earns nothing
     */
    public static OptionalLong count(Money fixed, Money price, Money variable) {
        Money contribution = price.minus(variable);
        if (!fixed.isPositive()) {
            return OptionalLong.of(0);
        }
        if (!contribution.isPositive()) {
            return OptionalLong.empty();
        }
        return OptionalLong.of(fixed.amount()
                .divide(contribution.amount(), 0, RoundingMode.CEILING)
                .longValueExact());
    }
}
