package puzzleworkshop.boards;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.events.OrderCancelled;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetTaken;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.Suggestion;

/**
 * The boards of orders. Every command locks as {@link BoardLocks} says, looks at the order and the sheet under the lock, and
 * writes what happened into the order's history and the sheet's, in one transaction.
 */
@Service
@Transactional
public class OrderBoards {

    private final BoardLocks locks;
    private final Holding holding;
    private final BoardStore store;
    private final BlanksWaiting blanks;
    private final Followers followers;
    private final SheetHolds holds;
    private final SheetRack rack;
    private final RackSettings settings;
    private final Orders orders;

    OrderBoards(
            BoardLocks locks,
            Holding holding,
            BoardStore store,
            BlanksWaiting blanks,
            Followers followers,
            SheetHolds holds,
            SheetRack rack,
            RackSettings settings,
            Orders orders) {
        this.locks = locks;
        this.holding = holding;
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
            throw Holding.closed(order);
        }
        store.plan(id, plan);
    }

    /** Other boards for a confirmed order that has become larger, more, or of other wood; held at once. */
    public void replace(OrderId id, BlankPlan plan, String who) {
        Order order = locks.lock(id, sheetsOf(plan));
        Holding.requireOpen(order);
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
            Holding.requireOpen(order);
        }
        Chosen before = find(id, position);
        if (before.held()) {
            holding.release(before.sheet().orElseThrow(), order.ref(), who);
        }
        followers.drop(order.ref(), position, who);
        store.place(id, position, sheet, place);
        if (confirmed) {
            holding.hold(order.ref(), sheet, place, before.size(), who);
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
        Holding.requireOpen(order);
        holdAll(order, who);
    }

    private void holdAll(Order order, String who) {
        for (Chosen blank : blanks.of(order.id())) {
            if (blank.sheet().isPresent() && !blank.held() && !blank.cut()) {
                holding.hold(order.ref(), blank.sheet().get(), blank.placement(), blank.size(), who);
            }
        }
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
        holding.hold(
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

    /** Sets one held sheet free, from its own page; the order keeps its other boards and waits for one again. */
    public void release(SheetId sheet, String who) {
        Order order = holding.lockHolder(sheet);
        holding.release(sheet, order.ref(), who);
    }

    /**
     * The board that had to be bought has come: it goes on the rack and is held for the order.
     *
     * @throws Refused when the order is not open any more, or the board has come already
     */
    public void arrive(OrderId id, int position, String place, String who) {
        Order order = locks.lock(id);
        Holding.requireOpen(order);
        Chosen chosen = find(id, position);
        BoardOffer offer = chosen.offer().flatMap(settings::offer).orElseThrow(() -> new Refused("boards.no-offer"));
        BoardFacts facts = BoardFacts.clean(offer.material(), offer.grade(), offer.thickness())
                .at(place);
        SheetId sheet = rack.add(Outline.rectangle(offer.size()), facts, offer.price(), who);
        store.place(id, position, sheet, chosen.placement());
        orders.note(id, Sentence.of("boards.history.arrived", offer.name(), sheet.value()), who);
        holding.hold(order.ref(), sheet, chosen.placement(), chosen.size(), who);
    }

    /** What the order holds is free again when it is given up; in the same transaction. */
    @EventListener
    public void cancelled(OrderCancelled event) {
        giveUpAll(locks.lock(event.order()), event.who());
    }

    private void giveUpAll(Order order, String who) {
        followers.drop(order.ref(), 0, who);
        for (SheetId sheet : holds.heldFor(order.id())) {
            holding.release(sheet, order.ref(), who);
        }
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

    private static SheetId[] sheetsOf(BlankPlan plan) {
        return plan.blocks().stream()
                .flatMap(block -> block.sheet().stream())
                .map(suggestion -> suggestion.sheet().id())
                .toArray(SheetId[]::new);
    }
}
