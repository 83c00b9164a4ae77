package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.time.Clock;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.runtime.AfterCommit;

/** Writes the lines of the supplies' ledger: who locks the item's row writes the next line of it. */
@Component
class StockLedger {

    private final SupplyStore store;
    private final Bookings bookings;
    private final Clock clock;
    private final AfterCommit afterCommit;

    StockLedger(SupplyStore store, Bookings bookings, Clock clock, AfterCommit afterCommit) {
        this.store = store;
        this.bookings = bookings;
        this.clock = clock;
        this.afterCommit = afterCommit;
    }

    /** Books once under a key; asked again, the movement that was booked then comes back. */
    Movement once(BookingKey key, String said, SupplyId id, java.util.function.Supplier<Movement> book) {
        return bookings.once(
                key,
                said,
                book,
                movement -> (long) movement.number(),
                number -> store.movements(id, 0, store.lastNumber(id)).stream()
                        .filter(movement -> movement.number() == number)
                        .findFirst()
                        .orElseThrow());
    }

    /** Takes some off the shelf; refused when there is not enough, unless that was accepted. */
    Movement out(
            SupplyItem item,
            Movement.Kind kind,
            BigDecimal quantity,
            Optional<OrderRef> order,
            String note,
            String who,
            boolean belowZeroAccepted) {
        requirePositive(quantity);
        Balance after = balance(item).minus(quantity);
        if (after.stock().signum() < 0 && !belowZeroAccepted) {
            throw new Refused(
                    "supplies.not-enough",
                    item.name(),
                    item.stock().doubleValue(),
                    quantity.doubleValue(),
                    Sentence.of(item.useUnit().textKey()));
        }
        return book(
                item,
                kind,
                quantity.negate(),
                item.unitCost().amount(),
                after,
                order,
                Optional.empty(),
                Optional.empty(),
                note,
                who,
                belowZeroAccepted);
    }

    /** Writes one line and tells open screens; the item must be locked. */
    Movement book(
            SupplyItem item,
            Movement.Kind kind,
            BigDecimal quantity,
            BigDecimal unitCost,
            Balance after,
            Optional<OrderRef> order,
            Optional<Supplier> supplier,
            Optional<Money> paid,
            String note,
            String who,
            boolean belowZeroAccepted) {
        SupplyId id = item.id().orElseThrow();
        Money cost = Money.of(unitCost, item.unitCost().currency());
        Movement movement = new Movement(
                id,
                item.name(),
                store.lastNumber(id) + 1,
                kind,
                quantity,
                cost,
                after.stock(),
                Money.of(after.average(), cost.currency()),
                order,
                supplier,
                paid,
                note.strip(),
                who,
                clock.instant());
        store.add(movement, belowZeroAccepted);
        afterCommit.tell(new StockMoved(id));
        return movement;
    }

    /** The item with its row held until the transaction ends. */
    SupplyItem locked(SupplyId id) {
        return store.lock(id).orElseThrow(() -> new Refused("supplies.unknown"));
    }

    static Balance balance(SupplyItem item) {
        return new Balance(item.stock(), item.unitCost().amount());
    }

    static void requirePositive(BigDecimal quantity) {
        if (quantity.signum() <= 0) {
            throw new Refused("supplies.quantity-not-positive");
        }
    }
}
