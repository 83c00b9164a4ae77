package puzzleworkshop.boards;

import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.sheets.Reservation;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.Stage;

/** Which order holds a sheet and which may: taken and given back under the locks, written in the order's history and the sheet's. */
@Component
class Holding {

    private final BoardLocks locks;
    private final Followers followers;
    private final SheetHolds holds;
    private final SheetRack rack;
    private final Orders orders;

    Holding(BoardLocks locks, Followers followers, SheetHolds holds, SheetRack rack, Orders orders) {
        this.locks = locks;
        this.followers = followers;
        this.holds = holds;
        this.rack = rack;
        this.orders = orders;
    }

    /** Both are locked already. */
    void hold(OrderRef order, SheetId sheet, Placement place, Size blank, String who) {
        holds.hold(sheet, order, place, blank, who);
        orders.note(order.id(), Sentence.of("boards.history.held", sheet.value()), who);
    }

    /** Both are locked already; whoever followed on the sheet goes on with it or waits again. */
    void release(SheetId sheet, OrderRef order, String who) {
        holds.release(sheet, who);
        orders.note(order.id(), Sentence.of("boards.history.released", sheet.value()), who);
        followers.afterRelease(sheet, who);
    }

    /** Who holds the sheet may change until its order is locked; then it is looked at again. */
    Order lockHolder(SheetId sheet) {
        OrderId holder = holder(sheet).orElseThrow(() -> new Refused("sheets.cut.notreserved", sheet.toString()));
        Order order = locks.lock(holder, sheet);
        if (!holder(sheet).equals(Optional.of(holder))) {
            throw new Refused("sheets.changed.meanwhile", sheet.toString());
        }
        return order;
    }

    private Optional<OrderId> holder(SheetId sheet) {
        return rack.find(sheet)
                .flatMap(Sheet::reservation)
                .map(Reservation::order)
                .map(OrderRef::id);
    }

    private static boolean mayHold(Order order) {
        return order.state() == OrderState.CONFIRMED
                && order.next().map(next -> next.compareTo(Stage.CUT) <= 0).orElse(false);
    }

    /** @throws Refused when the order's boards are cut already, or it is no order any more */
    static void requireOpen(Order order) {
        if (!mayHold(order)) {
            throw closed(order);
        }
    }

    static Refused closed(Order order) {
        return order.state() == OrderState.CONFIRMED
                ? new Refused("boards.cut-already", order.number())
                : new Refused(
                        "boards.closed",
                        order.number(),
                        Sentence.of(order.state().textKey()));
    }
}
