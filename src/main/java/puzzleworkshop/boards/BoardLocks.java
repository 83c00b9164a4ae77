package puzzleworkshop.boards;

import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;

/**
 * The one order of locking: first the rows of the orders that a command is about, lowest id first; then the sheets those hold
 * or follow on and those the command is about, lowest id first.
 *
 * <p>Whoever follows on a sheet is served by the command of the order that holds it, and its order's row is not locked for
 * that: a row with a lower id could no longer be. What guards a follower instead is the lock of the sheet on which it follows:
 * a command locks all sheets of its own order before it looks at or changes any of its blanks. So both see each other.
 *
 * <p>A sheet can join those of an order only through a sheet that is locked by another just then, and it is that one or its
 * offcut, with a higher id. Therefore the sheets are read anew after each lock, and the locks still come in order.
 */
@Component
class BoardLocks {

    private static final Comparator<SheetId> BY_ID = Comparator.comparingLong(SheetId::value);

    private final Orders orders;
    private final SheetHolds holds;
    private final BoardStore store;

    BoardLocks(Orders orders, SheetHolds holds, BoardStore store) {
        this.orders = orders;
        this.holds = holds;
        this.store = store;
    }

    /** Locks one order and its sheets, and these. */
    Order lock(OrderId order, SheetId... also) {
        return lock(List.of(order), Arrays.asList(also)).get(order);
    }

    /** The orders as they are once they are locked. */
    Map<OrderId, Order> lock(Collection<OrderId> about, Collection<SheetId> also) {
        Map<OrderId, Order> locked = new LinkedHashMap<>();
        about.stream()
                .distinct()
                .sorted(Comparator.comparingLong(OrderId::value))
                .forEach(order -> locked.put(order, orders.lock(order)));
        TreeSet<SheetId> done = new TreeSet<>(BY_ID);
        TreeSet<SheetId> open = sheets(locked.keySet(), also);
        while (!open.isEmpty()) {
            SheetId next = open.first();
            holds.lock(next);
            done.add(next);
            open = sheets(locked.keySet(), also);
            open.removeAll(done);
        }
        return locked;
    }

    private TreeSet<SheetId> sheets(Collection<OrderId> of, Collection<SheetId> also) {
        TreeSet<SheetId> sheets = new TreeSet<>(BY_ID);
        sheets.addAll(also);
        for (OrderId order : of) {
            sheets.addAll(holds.heldFor(order));
            store.following(order).forEach(blank -> sheets.add(blank.sheet()));
        }
        return sheets;
    }
}
