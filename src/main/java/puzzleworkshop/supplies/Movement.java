package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderRef;

/**
 * One line of the ledger.
 *
 * @param item which supply
 * @param number counts up from 1 for each supply
 * @param quantity in use units; out is negative
 * @param unitCost of one use unit in this movement
 * @param stockAfter what was on the shelf afterwards
 * @param averageAfter moving average afterwards
 * @param order for which, when for one
 * @param supplier from whom it was bought
 * @param paid for the whole purchase
 * @param note reason, in words
 */
public record Movement(
        SupplyId item,
        String itemName,
        int number,
        Kind kind,
        BigDecimal quantity,
        Money unitCost,
        BigDecimal stockAfter,
        Money averageAfter,
        Optional<OrderRef> order,
        Optional<Supplier> supplier,
        Optional<Money> paid,
        String note,
        String who,
        Instant at) {

    /** Why the stock changed. */
    public enum Kind {
        BOUGHT,
        USED,
        SPOILED,
        /** A count that found something else than the ledger said. */
        COUNTED,
        /** Left over from an order, back on the shelf. */
        RETURNED,
        /** Back to the supplier. */
        SENT_BACK;

        public String textKey() {
            return "supplies.movement." + name();
        }
    }

    /** What it cost: positive for what left the shelf. */
    public Money cost() {
        return unitCost.times(quantity.negate());
    }
}
