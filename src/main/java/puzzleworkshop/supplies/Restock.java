package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import puzzleworkshop.measure.Money;

/**
 * How a supply stands against its use.
 *
 * @param used in use units, over the days looked at
 * @param days over which that was, counted from its first use; at most the last weeks
 * @param usePerDay in use units; zero while it is too early to say
 * @param reorderPoint stock at which to buy again: the owner's word, else by the use; zero while nothing is used, or it is
 *     too early to say
 * @param pointByUse the same by the use alone
 * @param toBuy purchase units to buy now; zero when there is enough
 * @param lastSupplier from whom it was bought last
 * @param expected what that will cost at the last price
 */
public record Restock(
        SupplyItem item,
        BigDecimal used,
        int days,
        BigDecimal usePerDay,
        BigDecimal reorderPoint,
        BigDecimal pointByUse,
        int toBuy,
        Optional<Supplier> lastSupplier,
        Optional<Money> expected) {

    /** One day is no rate: so many days of use must lie behind an advice (common practice). */
    public static final int LEAST_DAYS = 28;

    private static final int DAILY_DIGITS = 6;

    /**
     * By the owner's word, else by the use so far. What has run out is to be bought at any time; as long as its use is not known, one purchase unit.
     *
     * @param used over the days, zero or more
     * @param days since its first use, at most those looked at
     * @param wasEverThere whether it has a history at all: something never bought and never used is not missing
     */
    static Restock of(SupplyItem item, BigDecimal used, int days, boolean wasEverThere, Optional<Movement> lastBought) {
        boolean known = used.signum() > 0 && days >= LEAST_DAYS;
        BigDecimal byUse = known ? ReorderPoint.of(used, days, item.leadDays(), item.spareDays()) : BigDecimal.ZERO;
        BigDecimal point = item.ownPoint().orElse(byUse);
        boolean out = wasEverThere && item.stock().signum() <= 0;
        boolean below = (known || item.ownPoint().isPresent()) && item.stock().compareTo(point) <= 0;
        int forAMonth = below || out
                ? ReorderPoint.toBuy(item.stock(), known ? used : BigDecimal.ZERO, known ? days : 1, item)
                : 0;
        int toBuy = below && item.ownPoint().isPresent()
                ? Math.max(forAMonth, ReorderPoint.toPass(item.stock(), point, item))
                : forAMonth;
        return new Restock(
                item,
                used,
                days,
                known ? used.divide(BigDecimal.valueOf(days), DAILY_DIGITS, RoundingMode.HALF_UP) : BigDecimal.ZERO,
                point,
                byUse,
                toBuy,
                lastBought.flatMap(Movement::supplier),
                lastBought.map(movement ->
                        movement.unitCost().times(item.usePerPurchase()).times((long) toBuy)));
    }

    /** It is used, but not long enough for a rate, and the owner has said nothing. */
    public boolean isTooEarly() {
        return item.ownPoint().isEmpty() && used.signum() > 0 && days < LEAST_DAYS;
    }

    public boolean isDue() {
        return toBuy > 0;
    }

    /** Days until the shelf is empty at the present use; empty while nothing is used. */
    public Optional<Integer> daysLeft() {
        return usePerDay.signum() <= 0
                ? Optional.empty()
                : Optional.of(Math.max(
                        0, item.stock().divide(usePerDay, 0, RoundingMode.FLOOR).intValue()));
    }
}
