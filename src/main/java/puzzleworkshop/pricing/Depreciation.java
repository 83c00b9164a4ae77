package puzzleworkshop.pricing;

import java.math.BigDecimal;
import puzzleworkshop.measure.Money;

/** How the price of a machine is spread: over years, or over what it makes. Results are not rounded. */
public final class Depreciation {

    private Depreciation() {}

    /** Straight line: the same each year. */
    public static Money perYear(Money price, Money residual, int years) {
        return price.minus(residual).dividedBy(years);
    }

    /** By use: (price − residual) ÷ units in its life × units made now. Units are hours, pieces or pages. */
    public static Money byUse(Money price, Money residual, BigDecimal lifeUnits, BigDecimal units) {
        return price.minus(residual).times(units).dividedBy(lifeUnits);
    }
}
