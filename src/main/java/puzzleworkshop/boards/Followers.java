package puzzleworkshop.boards;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.fit.RectanglePlaces;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.sheets.Cut;
import puzzleworkshop.sheets.Reservation;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.RackSettings;

/**
 * Several blanks on one sheet: it is held for the first, the others follow on what that one leaves. A sheet is never held
 * twice; a follower gets its hold when the offcut exists (or the first gives the sheet up), and waits again when its place
 * is gone. Within the transactions and under the locks of {@link OrderBoards}.
 */
@Component
class Followers {

    private final BoardStore store;
    private final SheetRack rack;
    private final SheetHolds holds;
    private final RackSettings settings;
    private final BlanksWaiting waiting;
    private final Orders orders;
    private final Clock clock;

    Followers(
            BoardStore store,
            SheetRack rack,
            SheetHolds holds,
            RackSettings settings,
            BlanksWaiting waiting,
            Orders orders,
            Clock clock) {
        this.store = store;
        this.rack = rack;
        this.holds = holds;
        this.settings = settings;
        this.waiting = waiting;
        this.orders = orders;
        this.clock = clock;
    }

    /** @throws Refused when the sheet is not held, or the place is not free beside the blanks that come before */
    void add(SheetId id, OrderRef order, int position, Placement place, Size blank, String who) {
        Sheet sheet = get(id);
        Reservation held = sheet.reservation().orElseThrow(() -> new Refused("sheets.cut.notreserved", id.toString()));
        List<Outline> left = without(List.of(sheet.outline()), held.placement(), held.blank());
        for (FollowingBlank before : store.following(id)) {
            left = without(left, before.placement(), before.blank());
        }
        if (left.stream().noneMatch(part -> RectanglePlaces.accepts(part, blank, place))) {
            throw new Refused("sheets.place.outside", blank, id.toString());
        }
        store.follow(id, order.id(), position, place, blank, who, now());
        write(id, order, SheetHolds.Note.FOLLOWED, "boards.history.follows", who);
    }

    private List<Outline> without(List<Outline> parts, Placement place, Size blank) {
        List<Outline> left = new ArrayList<>();
        for (Outline part : parts) {
            if (RectanglePlaces.accepts(part, blank, place)) {
                Remainder.after(part, blank, place, settings.rules().kerf(), settings.sizes())
                        .parts()
                        .forEach(rest -> left.add(rest.outline()));
            } else {
                left.add(part);
            }
        }
        return left;
    }

    /** Blanks of an order follow no more: one of them, or all (position 0). */
    void drop(OrderRef order, int position, String who) {
        for (FollowingBlank follower : store.following(order.id())) {
            if (position == 0 || follower.position() == position) {
                store.drop(follower, now());
                write(follower.sheet(), order, SheetHolds.Note.UNFOLLOWED, "boards.history.unfollows", who);
            }
        }
    }

    /** The sheet is free again: whoever followed gets it, the next follow on. */
    void afterRelease(SheetId id, String who) {
        passOn(id, List.of(get(id).outline()), List.of(id), who);
    }

    /** The sheet left the rack: whoever followed waits again. */
    void afterLoss(SheetId id, String who) {
        passOn(id, List.of(), List.of(), who);
    }

    /** @param kept in the old sheet's coordinates, as the cut's offcuts have their shapes */
    void afterCut(Cut cut, List<Outline> kept, String who) {
        passOn(cut.sheet(), kept, cut.offcuts(), who);
    }

    private void passOn(SheetId from, List<Outline> shapes, List<SheetId> pieces, String who) {
        List<FollowingBlank> followers = store.following(from);
        followers.forEach(follower -> store.drop(follower, now()));
        for (FollowingBlank follower : followers) {
            boolean placed = false;
            for (int i = 0; i < shapes.size() && !placed; i++) {
                if (RectanglePlaces.accepts(shapes.get(i), follower.blank(), follower.placement())) {
                    Placement moved = new Placement(
                            follower.placement().x() - shapes.get(i).origin().xMm(),
                            follower.placement().y() - shapes.get(i).origin().yMm(),
                            follower.placement().degrees());
                    placed = give(follower, pieces.get(i), moved, who);
                }
            }
            if (!placed) {
                write(from, follower.order(), SheetHolds.Note.UNFOLLOWED, "boards.history.unfollows", who);
            }
        }
    }

    private boolean give(FollowingBlank follower, SheetId piece, Placement place, String who) {
        OrderRef order = follower.order();
        if (!waiting.isWaiting(order.id(), follower.position())) {
            return false;
        }
        if (!get(piece).isFree()) {
            try {
                add(piece, order, follower.position(), place, follower.blank(), who);
            } catch (Refused noPlace) {
                return false;
            }
            return true;
        }
        holds.hold(piece, order, place, follower.blank(), who);
        store.place(order.id(), follower.position(), piece, place);
        store.given(follower, piece, now());
        orders.noteBeside(order.id(), Sentence.of("boards.history.held", piece.value()), who);
        return true;
    }

    /** Only holds that came about by this very cut go with it; any other stands against taking the cut back. */
    void beforeUndo(Cut cut, String who) {
        for (SheetId offcut : cut.offcuts()) {
            get(offcut)
                    .reservation()
                    .filter(held -> store.broughtTo(offcut)
                            .equals(Optional.of(held.order().id())))
                    .filter(held -> store.following(offcut).isEmpty())
                    .ifPresent(held -> {
                        holds.release(offcut, who);
                        store.followAgain(cut.sheet(), offcut);
                        write(cut.sheet(), held.order(), SheetHolds.Note.FOLLOWED, "boards.history.follows", who);
                    });
        }
    }

    private void write(SheetId sheet, OrderRef order, SheetHolds.Note note, String key, String who) {
        holds.note(sheet, note, order, who);
        orders.noteBeside(order.id(), Sentence.of(key, sheet.value()), who);
    }

    private Sheet get(SheetId id) {
        return rack.find(id).orElseThrow(() -> new Refused("sheets.unknown", id.toString()));
    }

    private Instant now() {
        return clock.instant();
    }
}
