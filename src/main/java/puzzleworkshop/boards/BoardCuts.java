package puzzleworkshop.boards;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.sheets.Cut;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.Stage;

/**
 * Blanks cut from the boards that orders hold, cuts taken back, and boards spoiled. Locks and writes as {@link OrderBoards} does.
 */
@Service
@Transactional
public class BoardCuts {

    private final BoardLocks locks;
    private final Holding holding;
    private final BlanksWaiting blanks;
    private final Followers followers;
    private final SheetHolds holds;
    private final SheetRack rack;
    private final Orders orders;

    BoardCuts(
            BoardLocks locks,
            Holding holding,
            BlanksWaiting blanks,
            Followers followers,
            SheetHolds holds,
            SheetRack rack,
            Orders orders) {
        this.locks = locks;
        this.holding = holding;
        this.blanks = blanks;
        this.followers = followers;
        this.holds = holds;
        this.rack = rack;
        this.orders = orders;
    }

    /**
     * Cuts every sheet held for the order, keeping the useful parts of each remainder at its old place. Blanks that were cut
     * from their sheet's own page are cut already.
     *
     * @param since cuts before this moment are of no use any more: the order was made again from the print or the board on
     * @throws Refused when a blank is neither cut nor has a sheet
     */
    public List<Cut> cut(OrderId id, Instant since, String who) {
        Order order = locks.lock(id);
        Holding.requireOpen(order);
        requireBoards(order, since);
        List<Cut> done = new ArrayList<>();
        for (SheetId sheet : holds.heldFor(id)) {
            List<Outline> kept = useful(sheet);
            String place = rack.find(sheet).orElseThrow().facts().place();
            done.add(cut(order.ref(), sheet, kept, place, who));
        }
        return done;
    }

    /**
     * Cuts the blank from a held sheet, from its own page.
     *
     * @param kept what is kept of the remainder, in the sheet's coordinates; the rest is scrap
     * @param place where the offcuts are put
     */
    public Cut cut(SheetId sheet, List<Outline> kept, String place, String who) {
        Order order = holding.lockHolder(sheet);
        return cut(order.ref(), sheet, kept, place, who);
    }

    private Cut cut(OrderRef order, SheetId sheet, List<Outline> kept, String place, String who) {
        Cut cut = holds.cut(sheet, kept, place, who);
        orders.note(order.id(), Sentence.of("boards.history.cut", sheet.value()), who);
        followers.afterCut(cut, kept, who);
        return cut;
    }

    private void requireBoards(Order order, Instant since) {
        Set<SheetId> ready = new HashSet<>(holds.heldFor(order.id()));
        rack.cutsOf(order.id()).stream()
                .filter(cut -> !cut.at().isBefore(since))
                .forEach(cut -> ready.add(cut.sheet()));
        boolean missing = blanks.of(order.id()).stream()
                .anyMatch(blank -> !blank.sheet().map(ready::contains).orElse(false));
        if (missing || ready.isEmpty()) {
            throw new Refused("boards.none-to-cut", order.number());
        }
    }

    /** What would be left of a held sheet: the proposal to confirm or correct when it is cut. */
    @Transactional(readOnly = true)
    public Remainder proposal(SheetId sheet) {
        return holds.proposal(sheet);
    }

    /**
     * Takes a mistaken cut back: the sheet is held for the order again, its offcuts never were.
     *
     * @throws Refused when the order has gone on since: its pieces lie there, and the sheet is no board any more
     */
    public void undo(long cutId, String who) {
        undo(cutId, true, who);
    }

    /** The same together with the tick of its stage, which decides by itself how long that may be done. */
    public void undoWithItsTick(long cutId, String who) {
        undo(cutId, false, who);
    }

    private void undo(long cutId, boolean onlyBeforeIsTicked, String who) {
        Cut cut = holds.find(cutId);
        List<SheetId> also = new ArrayList<>(cut.offcuts());
        also.add(cut.sheet());
        Optional<Order> order =
                cut.order().map(ref -> locks.lock(List.of(ref.id()), also).get(ref.id()));
        if (order.isEmpty()) {
            locks.lock(List.of(), also);
        }
        order.filter(o -> onlyBeforeIsTicked && isPastCut(o)).ifPresent(o -> {
            throw new Refused("boards.undo.gone-on", o.number());
        });
        followers.beforeUndo(cut, who);
        holds.undo(cutId, who);
        order.ifPresent(o -> {
            orders.note(o.id(), Sentence.of("boards.history.undone", cut.sheet().value()), who);
            if (o.state() == OrderState.CANCELLED) {
                holding.release(cut.sheet(), o.ref(), who);
            }
        });
    }

    private static boolean isPastCut(Order order) {
        return order.state() != OrderState.CANCELLED
                && order.next().map(next -> next.compareTo(Stage.CUT) > 0).orElse(order.state() != OrderState.QUOTE);
    }

    /** The boards held for the order are spoiled: they leave the rack, and whoever followed on them waits again. */
    public List<Sheet> spoil(OrderId id, String why, String who) {
        Order order = locks.lock(id);
        List<Sheet> boards = rack.heldFor(id);
        for (Sheet board : boards) {
            holds.release(board.id(), who);
            rack.scrap(board.id(), why, who);
            orders.note(id, Sentence.of("boards.history.spoiled", board.id().value()), who);
            followers.afterLoss(board.id(), who);
        }
        return boards;
    }

    /**
     * The blanks held for the order are spoiled: each is cut from its sheet and thrown away, what is left of the sheet goes
     * back to the rack, and the order waits for another.
     */
    public List<Cut> spoilBlanks(OrderId id, String why, String who) {
        Order order = locks.lock(id);
        List<Cut> spoiled = new ArrayList<>();
        for (SheetId sheet : holds.heldFor(id)) {
            List<Outline> kept = useful(sheet);
            String place = rack.find(sheet).orElseThrow().facts().place();
            Cut cut = holds.spoil(sheet, kept, place, why, who);
            orders.note(order.id(), Sentence.of("boards.history.blank-spoiled", sheet.value()), who);
            followers.afterCut(cut, kept, who);
            spoiled.add(cut);
        }
        return spoiled;
    }

    /** What each of the blanks held for the order carries of its sheet. */
    @Transactional(readOnly = true)
    public List<Money> costOfBlanks(OrderId id) {
        return holds.heldFor(id).stream()
                .map(sheet -> holds.blankCost(sheet, useful(sheet)))
                .toList();
    }

    private List<Outline> useful(SheetId sheet) {
        return holds.proposal(sheet).parts().stream()
                .filter(part -> !part.isScrap())
                .map(Remainder.Part::outline)
                .toList();
    }
}
