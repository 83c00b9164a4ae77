package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import puzzleworkshop.measure.Money;

/**
 * How a supply stands against its use.
 *
 * @param usePerDay in use units, over the last weeks
 * @param reorderPoint stock at which to buy again; zero while nothing is used
 * @param toBuy purchase units to buy now; zero when there is enough
 * @param lastSupplier from whom it was bought last
 * @param expected what that will cost at the last price
 */
public record Restock(
        SupplyItem item,
        BigDecimal usePerDay,
        BigDecimal reorderPoint,
        int toBuy,
        Optional<Supplier> lastSupplier,
        Optional<Money> expected) {

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
