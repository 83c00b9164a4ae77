package puzzleworkshop.boards;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderCancelled;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.sheets.Cut;
import puzzleworkshop.sheets.Reservation;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetTaken;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.workshop.Stage;

/**
 * The boards of orders. Every command locks as {@link BoardLocks} says, looks at the order and the sheet under the lock, and
 * writes what happened into the order's history and the sheet's, in one transaction.
 */
@Service
@Transactional
public class OrderBoards {

    private final BoardLocks locks;
    private final BoardStore store;
    private final BlanksWaiting blanks;
    private final Followers followers;
    private final SheetHolds holds;
    private final SheetRack rack;
    private final RackSettings settings;
    private final Orders orders;

    OrderBoards(
            BoardLocks locks,
            BoardStore store,
            BlanksWaiting blanks,
            Followers followers,
            SheetHolds holds,
            SheetRack rack,
            RackSettings settings,
            Orders orders) {
        this.locks = locks;
        this.store = store;
        this.blanks = blanks;
        this.followers = followers;
        this.holds = holds;
        this.rack = rack;
        this.settings = settings;
        this.orders = orders;
    }

    /** Replaces the boards planned for a quote, which holds none. */
    public void plan(OrderId id, BlankPlan plan) {
        Order order = locks.lock(id);
        if (order.state() != OrderState.QUOTE) {
            throw closed(order);
        }
        store.plan(id, plan);
    }

    /** Other boards for a confirmed order that has become larger, more, or of other wood; held at once. */
    public void replace(OrderId id, BlankPlan plan, String who) {
        Order order = locks.lock(id, sheetsOf(plan));
        requireOpen(order);
        giveUpAll(order, who);
        store.plan(id, plan);
        holdAll(order, who);
    }

    /**
     * Another place for one blank of an order; held at once when the order is confirmed.
     *
     * @throws Refused when the order is given up, done, or already cut
     * @throws SheetTaken when somebody was quicker
     */
    public void choose(OrderId id, int position, Suggestion suggestion, String who) {
        choose(id, position, suggestion.sheet().id(), suggestion.placement(), who);
    }

    /** The same for a blank that waits, with its place found elsewhere. */
    public void choose(OrderId id, int position, SheetId sheet, Placement place, String who) {
        Order order = locks.lock(id, sheet);
        boolean confirmed = order.state() == OrderState.CONFIRMED;
        if (order.state() != OrderState.QUOTE) {
            requireOpen(order);
        }
        Chosen before = find(id, position);
        if (before.held()) {
            release(before.sheet().orElseThrow(), order.ref(), who);
        }
        followers.drop(order.ref(), position, who);
        store.place(id, position, sheet, place);
        if (confirmed) {
            hold(order.ref(), sheet, place, before.size(), who);
        } else {
            orders.note(id, Sentence.of("boards.history.chosen", sheet.value()), who);
        }
    }

    /**
     * Holds every chosen sheet for the order that it neither holds nor has cut. Either all are held or none.
     *
     * @throws SheetTaken when one is taken meanwhile, with its number
     */
    public void hold(OrderId id, String who) {
        SheetId[] chosen =
                blanks.of(id).stream().flatMap(blank -> blank.sheet().stream()).toArray(SheetId[]::new);
        Order order = locks.lock(id, chosen);
        requireOpen(order);
        holdAll(order, who);
    }

    private void holdAll(Order order, String who) {
        for (Chosen blank : blanks.of(order.id())) {
            if (blank.sheet().isPresent() && !blank.held() && !blank.cut()) {
                hold(order.ref(), blank.sheet().get(), blank.placement(), blank.size(), who);
            }
        }
    }

    private void hold(OrderRef order, SheetId sheet, Placement place, Size blank, String who) {
        holds.hold(sheet, order, place, blank, who);
        orders.note(order.id(), Sentence.of("boards.history.held", sheet.value()), who);
    }

    /** A blank that waits, and its place on a sheet. */
    public record Place(OrderId order, int position, SheetId sheet, Placement placement) {}

    /**
     * Holds a sheet for a blank that waits, and plans further blanks on what it leaves: all or nothing.
     *
     * @throws SheetTaken when somebody was quicker
     * @throws Refused when a place is not free, or one of the blanks no longer waits
     */
    public void holdWithFollowers(Place first, List<Place> next, String who) {
        List<OrderId> about = new ArrayList<>(List.of(first.order()));
        next.forEach(place -> about.add(place.order()));
        Map<OrderId, Order> locked = locks.lock(about, List.of(first.sheet()));
        Order order = locked.get(first.order());
        requireWaiting(order, first.position());
        followers.drop(order.ref(), first.position(), who);
        store.place(order.id(), first.position(), first.sheet(), first.placement());
        hold(
                order.ref(),
                first.sheet(),
                first.placement(),
                find(order.id(), first.position()).size(),
                who);
        for (Place place : next) {
            follow(locked.get(place.order()), place, who);
        }
    }

    /**
     * Plans a blank that waits on a sheet held for another: it is held on what the first leaves, when that is cut.
     *
     * @throws Refused when the sheet is not held or the place is taken
     */
    public void follow(Place place, String who) {
        follow(locks.lock(place.order(), place.sheet()), place, who);
    }

    private void follow(Order order, Place place, String who) {
        requireWaiting(order, place.position());
        followers.drop(order.ref(), place.position(), who);
        followers.add(
                place.sheet(),
                order.ref(),
                place.position(),
                place.placement(),
                find(order.id(), place.position()).size(),
                who);
    }

    /** The blank no longer waits for what another leaves. */
    public void unfollow(FollowingBlank blank, String who) {
        Order order = locks.lock(blank.order().id());
        followers.drop(order.ref(), blank.position(), who);
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
        requireOpen(order);
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
        Order order = lockHolder(sheet);
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
                release(cut.sheet(), o.ref(), who);
            }
        });
    }

    private static boolean isPastCut(Order order) {
        return order.state() != OrderState.CANCELLED
                && order.next().map(next -> next.compareTo(Stage.CUT) > 0).orElse(order.state() != OrderState.QUOTE);
    }

    /** Sets one held sheet free, from its own page; the order keeps its other boards and waits for one again. */
    public void release(SheetId sheet, String who) {
        Order order = lockHolder(sheet);
        release(sheet, order.ref(), who);
    }

    private void release(SheetId sheet, OrderRef order, String who) {
        holds.release(sheet, who);
        orders.note(order.id(), Sentence.of("boards.history.released", sheet.value()), who);
        followers.afterRelease(sheet, who);
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

    /**
     * The board that had to be bought has come: it goes on the rack and is held for the order.
     *
     * @throws Refused when the order is not open any more, or the board has come already
     */
    public void arrive(OrderId id, int position, String place, String who) {
        Order order = locks.lock(id);
        requireOpen(order);
        Chosen chosen = find(id, position);
        BoardOffer offer = chosen.offer().flatMap(settings::offer).orElseThrow(() -> new Refused("boards.no-offer"));
        BoardFacts facts = BoardFacts.clean(offer.material(), offer.grade(), offer.thickness())
                .at(place);
        SheetId sheet = rack.add(Outline.rectangle(offer.size()), facts, offer.price(), who);
        store.place(id, position, sheet, chosen.placement());
        orders.note(id, Sentence.of("boards.history.arrived", offer.name(), sheet.value()), who);
        hold(order.ref(), sheet, chosen.placement(), chosen.size(), who);
    }

    /** What the order holds is free again when it is given up; in the same transaction. */
    @EventListener
    public void cancelled(OrderCancelled event) {
        giveUpAll(locks.lock(event.order()), event.who());
    }

    private void giveUpAll(Order order, String who) {
        followers.drop(order.ref(), 0, who);
        for (SheetId sheet : holds.heldFor(order.id())) {
            release(sheet, order.ref(), who);
        }
    }

    /** Who holds the sheet may change until its order is locked; then it is looked at again. */
    private Order lockHolder(SheetId sheet) {
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

    private Chosen find(OrderId order, int position) {
        return blanks.of(order).stream()
                .filter(blank -> blank.position() == position)
                .findFirst()
                .orElseThrow(() -> new Refused("boards.no-blank"));
    }

    private void requireWaiting(Order order, int position) {
        if (!blanks.isWaiting(order.id(), position)) {
            throw new Refused("boards.not-waiting", order.number());
        }
    }

    private static boolean mayHold(Order order) {
        return order.state() == OrderState.CONFIRMED
                && order.next().map(next -> next.compareTo(Stage.CUT) <= 0).orElse(false);
    }

    private static void requireOpen(Order order) {
        if (!mayHold(order)) {
            throw closed(order);
        }
    }

    private static Refused closed(Order order) {
        return order.state() == OrderState.CONFIRMED
                ? new Refused("boards.cut-already", order.number())
                : new Refused(
                        "boards.closed",
                        order.number(),
                        Sentence.of(order.state().textKey()));
    }

    private static SheetId[] sheetsOf(BlankPlan plan) {
        return plan.blocks().stream()
                .flatMap(block -> block.sheet().stream())
                .map(suggestion -> suggestion.sheet().id())
                .toArray(SheetId[]::new);
    }
}
