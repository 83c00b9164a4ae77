package puzzleworkshop.sheets;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.springframework.stereotype.Component;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Remainder;
import puzzleworkshop.geometry.fit.RectanglePlaces;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

/** What happens to a sheet for an order: held, let go, cut, and a mistaken cut undone. Within the rack's transactions. */
@Component
class SheetCutting {

    private final SheetStore sheets;
    private final CutStore cuts;
    private final RackStore settings;
    private final SheetFinder finder;
    private final OrderNumbers orders;
    private final SheetFollows follows;
    private final Clock clock;

    SheetCutting(
            SheetStore sheets,
            CutStore cuts,
            RackStore settings,
            SheetFinder finder,
            OrderNumbers orders,
            SheetFollows follows,
            Clock clock) {
        this.sheets = sheets;
        this.cuts = cuts;
        this.settings = settings;
        this.finder = finder;
        this.orders = orders;
        this.follows = follows;
        this.clock = clock;
    }

    /**
     * Holds a sheet for an order, with the blank lying there. Of many at a time exactly one succeeds.
     *
     * @throws SheetTaken when it is no longer free
     * @throws Refused when the blank does not fit there, or the board may not be cut at all
     */
    void reserve(SheetId id, long orderId, Placement placement, Size blank, String who) {
        SheetState state = sheets.hold(id);
        if (state != SheetState.FREE) {
            throw new SheetTaken(id, cuts.holder(id).map(orders::shown));
        }
        Sheet sheet = sheets.get(id);
        if (!sheet.facts().past().isFitForCutting()) {
            throw new Refused("sheets.whynot.past." + sheet.facts().past().name());
        }
        if (!RectanglePlaces.accepts(sheet.outline(), blank, placement)) {
            throw new Refused("sheets.place.outside", blank, id.toString());
        }
        sheets.turn(id, SheetState.RESERVED, now());
        cuts.reserve(id, orderId, placement, blank, who, now());
        sheets.note(id, "reserved", orders.shown(orderId), who, now());
    }

    /** Sets all sheets held for an order free again; none is fine. */
    void release(long orderId, String who) {
        for (SheetId id : cuts.reservedFor(orderId)) {
            sheets.lock(id);
            Optional<Reservation> held = sheets.get(id).reservation();
            if (held.isPresent() && held.get().orderId() == orderId) {
                cuts.end(held.get().id(), "RELEASED", now());
                sheets.turn(id, SheetState.FREE, now());
                sheets.note(id, "released", orders.shown(orderId), who, now());
                follows.passOn(id, List.of(sheets.get(id).outline()), List.of(id), who);
            }
        }
    }

    /** What would be left of a reserved sheet: the proposal to confirm or correct when it is cut. */
    Remainder proposal(SheetId id) {
        Sheet sheet = sheets.get(id);
        Reservation held = sheet.reservation().orElseThrow(() -> new Refused("sheets.cut.notreserved", id.toString()));
        return Remainder.after(
                sheet.outline(),
                held.blank(),
                held.placement(),
                settings.rules().kerf(),
                finder.sizes());
    }

    /** Cuts every sheet held for the order, keeping the useful parts of each remainder at its old place. */
    List<Cut> cut(long orderId, String who) {
        List<Cut> done = new ArrayList<>();
        for (SheetId id : cuts.reservedFor(orderId)) {
            List<Outline> kept = proposal(id).parts().stream()
                    .filter(part -> !part.isScrap())
                    .map(Remainder.Part::outline)
                    .toList();
            done.add(cut(id, kept, sheets.get(id).facts().place(), who));
        }
        return done;
    }

    /**
     * Cuts the blank from a reserved sheet.
     *
     * @param kept what is kept of the remainder, in the sheet's coordinates; the rest is scrap
     * @param place where the offcuts are put
     */
    Cut cut(SheetId id, List<Outline> kept, String place, String who) {
        sheets.hold(id);
        Sheet sheet = sheets.get(id);
        Reservation held = sheet.reservation().orElseThrow(() -> new Refused("sheets.cut.notreserved", id.toString()));
        Remainder rest = proposal(id);
        rest.requireHolds(kept, () -> new Refused("sheets.cut.offcutoutside", id.toString()));
        RackRules rules = settings.rules();
        List<Area> areas = kept.stream().map(Outline::area).toList();
        double scrap = sheet.outline().area().mm2()
                - held.blank().area().mm2()
                - areas.stream().mapToDouble(Area::mm2).sum();
        CostSplit split = CostSplit.of(
                sheet.cost(),
                held.blank().area(),
                areas,
                Area.mm2(Math.max(0, scrap)),
                rules.offcutCost(),
                rules.share());
        cuts.end(held.id(), "CUT", now());
        sheets.turn(id, SheetState.USED, now());
        long cut = cuts.cut(held, split, sheet.cost(), rules.offcutCost(), who, now());
        BoardFacts facts = sheet.facts().at(place).noted("");
        List<SheetId> offcuts = new ArrayList<>();
        for (int i = 0; i < kept.size(); i++) {
            SheetId offcut = sheets.add(
                    kept.get(i).atOrigin(), facts, split.offcuts().get(i).rounded(), OptionalLong.of(cut), now());
            sheets.note(offcut, "offcut", id.toString(), who, now());
            offcuts.add(offcut);
        }
        sheets.note(id, "cut", orders.shown(held.orderId()), who, now());
        follows.passOn(id, kept, offcuts, who);
        return cuts.find(cut).orElseThrow();
    }

    /** Takes a mistaken cut back: the sheet is held for the order again, its offcuts never were. */
    void undo(long cutId, String who) {
        Cut cut = cuts.find(cutId).orElseThrow(() -> new Refused("sheets.undo.unknown"));
        sheets.lock(cut.sheet());
        if (cuts.find(cutId).orElseThrow().undone()) {
            throw new Refused("sheets.undo.already");
        }
        for (SheetId offcut : cut.offcuts()) {
            if (sheets.hold(offcut) == SheetState.RESERVED) {
                takeBack(offcut, cut.sheet(), who);
            }
            if (sheets.hold(offcut) != SheetState.FREE) {
                throw new Refused("sheets.undo.used", offcut.toString());
            }
            sheets.turn(offcut, SheetState.WITHDRAWN, now());
            sheets.note(offcut, "withdrawn", cut.sheet().toString(), who, now());
        }
        cuts.markUndone(cutId, now());
        Optional<Long> reservation = cuts.reservationOf(cutId);
        reservation.ifPresent(cuts::reopen);
        sheets.turn(cut.sheet(), reservation.isPresent() ? SheetState.RESERVED : SheetState.FREE, now());
        sheets.note(cut.sheet(), "undone", "", who, now());
    }

    /** Only a hold that came about by this very cut goes with it; any other stands against taking the cut back. */
    private void takeBack(SheetId offcut, SheetId parent, String who) {
        Reservation held = sheets.get(offcut).reservation().orElseThrow();
        if (follows.broughtTo(offcut).filter(order -> order == held.orderId()).isPresent()
                && follows.on(offcut).isEmpty()) {
            cuts.end(held.id(), "RELEASED", now());
            sheets.turn(offcut, SheetState.FREE, now());
            follows.follow(parent, offcut);
        }
    }

    private Instant now() {
        return clock.instant();
    }
}
