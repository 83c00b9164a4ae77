package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * When to buy again, and how much: the use of a day × (lead days + spare days) is the stock at which the order must go
 * out. Source: reorder point with safety time, any stock-keeping textbook (common practice).
 */
public final class ReorderPoint {

    /** What is bought should last this long beyond the lead time. */
    static final int COVER_DAYS = 30;

    private ReorderPoint() {}

    /**
     * @param used in use units over the days looked at, zero or more
     * @param days looked at, above zero
     */
    public static BigDecimal of(BigDecimal used, int days, int leadDays, int spareDays) {
        return used.multiply(BigDecimal.valueOf((long) leadDays + spareDays))
                .divide(BigDecimal.valueOf(days), MathContext.DECIMAL64);
    }

    /** Whole purchase units that bring the stock above the owner's own point. */
    static int toPass(BigDecimal stock, BigDecimal ownPoint, SupplyItem item) {
        return ownPoint.subtract(stock)
                        .divide(item.usePerPurchase(), 0, RoundingMode.FLOOR)
                        .intValueExact()
                + 1;
    }

    /** Whole purchase units that bring the stock to last through lead time, spare days and a month. */
    static int toBuy(BigDecimal stock, BigDecimal used, int days, SupplyItem item) {
        BigDecimal wanted =
                of(used, days, item.leadDays() + COVER_DAYS, item.spareDays()).subtract(stock);
        return Math.max(
                1, wanted.divide(item.usePerPurchase(), 0, RoundingMode.CEILING).intValueExact());
    }
}
