package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;

/**
 * Takes stock. A count says what lay on the shelf when counting began, so it is held against the ledger as it stood then:
 * what is used or bought while somebody counts is booked by itself and is not part of the difference.
 */
@Service
public class StockCounts {

    private final StockLedger ledger;
    private final SupplyStore store;
    private final Bookings bookings;

    StockCounts(StockLedger ledger, SupplyStore store, Bookings bookings) {
        this.ledger = ledger;
        this.store = store;
        this.bookings = bookings;
    }

    /**
     * What was counted of one supply.
     *
     * @param seen the last movement in its ledger when counting began, 0 for none
     * @param counted in use units, zero or more
     */
    public record Count(SupplyId supply, int seen, BigDecimal counted) {

        /** Whoever counts the same shelf at the same moment counts the same. */
        public BookingKey key() {
            return BookingKey.seen("count", supply.value(), seen);
        }
    }

    /** The last movement of each supply, 0 where there is none: read when counting begins. */
    @Transactional(readOnly = true)
    public Map<SupplyId, Integer> seen() {
        return store.lastNumbers();
    }

    /** Books the difference between what was counted and what the ledger said then; nothing when they agree. */
    @Books
    @Transactional
    public Optional<Movement> count(BookingKey key, Count count, String who) {
        SupplyItem item = ledger.locked(count.supply());
        if (count.counted().signum() < 0) {
            throw new Refused("supplies.counted-negative");
        }
        BigDecimal difference = count.counted().subtract(store.stockAfter(count.supply(), count.seen()));
        if (difference.signum() == 0) {
            return Optional.empty();
        }
        String said = "count " + count.counted() + " of supply " + count.supply() + " after movement " + count.seen();
        return Optional.of(ledger.once(key, said, count.supply(), () -> bookNow(item, difference, who)));
    }

    private Movement bookNow(SupplyItem item, BigDecimal difference, String who) {
        Balance after =
                new Balance(item.stock().add(difference), item.unitCost().amount());
        if (after.stock().signum() < 0) {
            throw new Refused("supplies.count.overtaken", item.name());
        }
        return ledger.book(
                item,
                Movement.Kind.COUNTED,
                difference,
                item.unitCost().amount(),
                after,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                "",
                who,
                false);
    }

    /** Takes stock of many at once; all or none are booked. */
    @Books
    @Transactional
    public void take(BookingKey key, List<Count> counts, String who) {
        List<Count> inOrder = counts.stream()
                .sorted(Comparator.comparing(count -> count.supply().value()))
                .toList();
        // each under its own key too: two windows that saw the same shelf count it once
        bookings.once(key, "take stock of " + inOrder, () -> inOrder.forEach(count -> count(count.key(), count, who)));
    }
}
