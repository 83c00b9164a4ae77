package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Stock and moving average of one supply: every purchase mixes its price into what is there, everything that leaves
 * goes at the average. Source: weighted average cost, perpetual method (IAS 2, paragraph 27; worked in the tests).
 *
 * @param stock in use units
 * @param average cost of one use unit, six digits kept
 */
record Balance(BigDecimal stock, BigDecimal average) {

    private static final int DIGITS = 6;

    /** After something came in at a price. A shelf that was empty or owed takes the new price as its average. */
    Balance plus(BigDecimal quantity, BigDecimal unitCost) {
        BigDecimal after = stock.add(quantity);
        if (stock.signum() <= 0 || after.signum() <= 0) {
            return new Balance(after, kept(unitCost));
        }
        BigDecimal value = stock.multiply(average).add(quantity.multiply(unitCost));
        return new Balance(after, value.divide(after, DIGITS, RoundingMode.HALF_UP));
    }

    /** After something left; the average stays. */
    Balance minus(BigDecimal quantity) {
        return new Balance(stock.subtract(quantity), average);
    }

    private static BigDecimal kept(BigDecimal cost) {
        return cost.setScale(DIGITS, RoundingMode.HALF_UP);
    }
}
