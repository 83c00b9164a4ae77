package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.Collection;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.runtime.VersionedCache;

/**
 * The shelf of supplies. Every change is a line in the ledger, also published as a {@link Movement}; the item's row is
 * locked while it is written, so that two people never use the same last sheet. Stock does not go below zero unless
 * someone says why.
 */
@Service
public class Supplies {

    private static final int COST_DIGITS = 6;

    private final SupplyStore store;
    private final StockLedger ledger;
    private final HouseUnits house;
    private final AfterCommit afterCommit;
    /** Asked for with every price: kept until a fact or a stock changes. */
    private final VersionedCache<Class<SupplyItem>, List<SupplyItem>> known = VersionedCache.ofMost(1);

    Supplies(SupplyStore store, StockLedger ledger, HouseUnits house, AfterCommit afterCommit) {
        this.store = store;
        this.ledger = ledger;
        this.house = house;
        this.afterCommit = afterCommit;
    }

    /** Told when a supply was added or its facts changed. */
    public record SupplyChanged(SupplyId item) implements Change {}

    /** Before those who look at the shelf again. */
    @EventListener({SupplyChanged.class, StockMoved.class})
    @Order(Ordered.HIGHEST_PRECEDENCE)
    void forget() {
        known.forget();
    }

    /** In which new supplies are paid. */
    public Currency currency() {
        return house.currency();
    }

    /** All supplies in use, by kind and name. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public List<SupplyItem> items() {
        return known.get(SupplyItem.class, store::items);
    }

    @Transactional(readOnly = true)
    public Optional<SupplyItem> find(SupplyId id) {
        return store.find(id);
    }

    /** The one of a kind that prices are worked out with and the bench takes first. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public Optional<SupplyItem> usual(SupplyKind kind) {
        return items().stream()
                .filter(item -> item.kind() == kind
                        && item.usual()
                        && item.unitCost().currency().equals(house.currency()))
                .findFirst();
    }

    /**
     * Keeps a new supply or changes the facts of a known one; stock and cost change only by movements. Making one the
     * usual of its kind unmakes the one before.
     */
    @Transactional
    public SupplyItem keep(SupplyItem item) {
        if (item.name().isBlank() || item.purchaseUnit().isBlank()) {
            throw new Refused("supplies.name-missing");
        }
        if (item.usePerPurchase().signum() <= 0) {
            throw new Refused("supplies.use-per-purchase");
        }
        if (item.useUnit() == UseUnit.SHEET
                && (item.width().isEmpty() || item.height().isEmpty())) {
            throw new Refused("supplies.sheet-without-size");
        }
        if (item.usual()) {
            store.noLongerUsual(item.kind());
        }
        try {
            SupplyId id = item.id().orElseGet(() -> store.add(item));
            if (item.id().isPresent()) {
                store.change(id, item);
            }
            afterCommit.tell(new SupplyChanged(id));
            return store.find(id).orElseThrow();
        } catch (DuplicateKeyException twice) {
            throw new Refused("supplies.name-twice", item.name());
        }
    }

    /**
     * Books a purchase.
     *
     * @param purchaseUnits how many rolls, packs or pieces, above zero
     * @param paid for all of them, without recoverable tax
     * @param supplier by name; a new name is kept; empty when not known
     */
    @Books
    @Transactional
    public Movement buy(
            BookingKey key, SupplyId id, BigDecimal purchaseUnits, Money paid, String supplier, String who) {
        String said = "buy " + purchaseUnits + " of supply " + id + " for " + paid + " from " + supplier;
        return ledger.once(key, said, id, () -> buyNow(id, purchaseUnits, paid, supplier, who));
    }

    private Movement buyNow(SupplyId id, BigDecimal purchaseUnits, Money paid, String supplier, String who) {
        SupplyItem item = ledger.locked(id);
        StockLedger.requirePositive(purchaseUnits);
        if (paid.isNegative()) {
            throw new Refused("supplies.paid-negative");
        }
        BigDecimal quantity = purchaseUnits.multiply(item.usePerPurchase());
        BigDecimal unitCost = paid.amount().divide(quantity, COST_DIGITS, RoundingMode.HALF_UP);
        Optional<Supplier> from = supplier.isBlank() ? Optional.empty() : Optional.of(store.supplier(supplier));
        Balance after = StockLedger.balance(item).plus(quantity, unitCost);
        return ledger.book(
                item,
                Movement.Kind.BOUGHT,
                quantity,
                unitCost,
                after,
                Optional.empty(),
                from,
                Optional.of(paid),
                "",
                who,
                false);
    }

    /**
     * Uses some for an order.
     *
     * @param quantity in use units, above zero
     * @throws Refused when there is not enough; {@link #useKnowingly} books it all the same
     */
    @Transactional
    public Movement use(SupplyId id, BigDecimal quantity, OrderRef order, String who) {
        return ledger.out(ledger.locked(id), Movement.Kind.USED, quantity, Optional.of(order), "", who, false);
    }

    /** Uses some although the ledger says there is not enough; the reason stands in the ledger. */
    @Transactional
    public Movement useKnowingly(SupplyId id, BigDecimal quantity, OrderRef order, String reason, String who) {
        requireReason(reason);
        return ledger.out(ledger.locked(id), Movement.Kind.USED, quantity, Optional.of(order), reason, who, true);
    }

    /** Books something spoiled, for an order or for none. */
    @Books
    @Transactional
    public Movement spoil(
            BookingKey key, SupplyId id, BigDecimal quantity, Optional<OrderRef> order, String reason, String who) {
        requireReason(reason);
        return ledger.once(
                key,
                "spoil " + quantity + " of supply " + id + ": " + reason,
                id,
                () -> ledger.out(ledger.locked(id), Movement.Kind.SPOILED, quantity, order, reason, who, false));
    }

    /** Sends some back to the supplier, at the average cost. */
    @Books
    @Transactional
    public Movement sendBack(BookingKey key, SupplyId id, BigDecimal quantity, String reason, String who) {
        requireReason(reason);
        return ledger.once(
                key,
                "send back " + quantity + " of supply " + id + ": " + reason,
                id,
                () -> ledger.out(
                        ledger.locked(id), Movement.Kind.SENT_BACK, quantity, Optional.empty(), reason, who, false));
    }

    /** Puts back on the shelf what an order did not need, at the average cost. */
    @Transactional
    public Movement putBack(SupplyId id, BigDecimal quantity, OrderRef order, String who) {
        SupplyItem item = ledger.locked(id);
        StockLedger.requirePositive(quantity);
        Balance after = new Balance(item.stock().add(quantity), item.unitCost().amount());
        return ledger.book(
                item,
                Movement.Kind.RETURNED,
                quantity,
                item.unitCost().amount(),
                after,
                Optional.of(order),
                Optional.empty(),
                Optional.empty(),
                "",
                who,
                false);
    }

    /** What one use unit cost on average at a moment; empty before anything was bought. */
    @Transactional(readOnly = true)
    public Optional<Money> unitCost(SupplyId id, Instant at) {
        return store.lastBefore(id, at).map(Movement::averageAfter);
    }

    /** The ledger of one supply, newest first. */
    @Transactional(readOnly = true)
    public List<Movement> movements(SupplyId id, int offset, int limit) {
        return store.movements(id, offset, limit);
    }

    @Transactional(readOnly = true)
    public int countMovements(SupplyId id) {
        return store.lastNumber(id);
    }

    /** What was paid when and to whom, oldest first. */
    @Transactional(readOnly = true)
    public List<Movement> purchases(SupplyId id) {
        return store.purchases(id);
    }

    /** Everything an order took, spoiled or gave back. */
    @Transactional(readOnly = true)
    public List<Movement> usedFor(OrderId order) {
        return store.ofOrder(order);
    }

    @Transactional(readOnly = true)
    public List<Supplier> suppliers() {
        return store.suppliers();
    }

    /** Why any of these must not be cut by laser; empty when all may. */
    @Transactional(readOnly = true)
    public List<Sentence> forbiddenAtLaser(Collection<SupplyId> ids) {
        return ids.stream()
                .flatMap(id -> store.find(id).stream())
                .flatMap(item -> item.forbiddenAtLaser().stream())
                .toList();
    }

    private static void requireReason(String reason) {
        if (reason.isBlank()) {
            throw new Refused("supplies.reason-missing");
        }
    }
}
