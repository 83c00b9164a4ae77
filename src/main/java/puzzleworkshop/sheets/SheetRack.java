package puzzleworkshop.sheets;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.RectanglePlaces;
import puzzleworkshop.geometry.Remainder;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

/**
 * The rack: takes sheets in, holds them for orders, cuts them, throws them away. Every change leaves a history line; who
 * gets a sheet is decided by the database.
 */
@Service
@Transactional
public class SheetRack {

    private final SheetStore sheets;
    private final CutStore cuts;
    private final RackStore settings;
    private final SheetFinder finder;
    private final OrderNumbers orders;
    private final Clock clock;

    SheetRack(
            SheetStore sheets, CutStore cuts, RackStore settings, SheetFinder finder, OrderNumbers orders, Clock clock) {
        this.sheets = sheets;
        this.cuts = cuts;
        this.settings = settings;
        this.finder = finder;
        this.orders = orders;
        this.clock = clock;
    }

    /** Takes a board in. Its outline is moved to the origin, its cost rounded to what can be paid. */
    public SheetId add(Outline outline, BoardFacts facts, Money cost, String who) {
        return add(outline, facts, cost, OptionalLong.empty(), "entered", facts.place(), who);
    }

    SheetId add(
            Outline outline, BoardFacts facts, Money cost, OptionalLong fromCut, String what, String detail, String who) {
        requirePossible(outline, facts, cost);
        SheetId id = sheets.add(outline.atOrigin(), facts, cost.rounded(), fromCut, now());
        sheets.note(id, what, detail, who, now());
        return id;
    }

    /** Refuses boards that cannot be: too large, too thick, an unknown material, a negative cost. */
    void requirePossible(Outline outline, BoardFacts facts, Money cost) {
        Size largest = settings.rules().largest();
        if (!outline.isWithin(largest)) {
            throw new Refused("sheets.outline.toolarge", outline.bounds(), largest);
        }
        if (cost.isNegative()) {
            throw new Refused("sheets.cost.negative");
        }
        requireWithin(facts.nominal().mm(), 0.3, 50, "sheets.thickness.range");
        facts.measured().ifPresent(m -> requireWithin(m.mm(), 0.3, 50, "sheets.thickness.range"));
        requireWithin(facts.bow().mm(), 0, 100, "sheets.bow.range");
        if (settings.materials().stream().noneMatch(m -> m.id().equals(facts.material()))) {
            throw new Refused("sheets.material.unknown", facts.material());
        }
    }

    private static void requireWithin(double value, double least, double most, String key) {
        if (value < least || value > most) {
            throw new Refused(key);
        }
    }

    /** @param version the sheet had when it was read; a change by someone else meanwhile is refused */
    public void change(SheetId id, BoardFacts facts, Money cost, long version, String who) {
        Sheet before = get(id);
        requirePossible(before.outline(), facts, cost);
        if (!sheets.change(id, facts, cost.rounded(), version)) {
            throw new Refused("sheets.changed.meanwhile", id.toString());
        }
        sheets.note(id, "changed", changes(before.facts(), facts), who, now());
    }

    private static String changes(BoardFacts before, BoardFacts after) {
        List<String> changed = new ArrayList<>();
        if (!before.place().equals(after.place())) {
            changed.add(before.place() + " → " + after.place());
        }
        if (before.past() != after.past()) {
            changed.add(before.past() + " → " + after.past());
        }
        if (before.bow().compareTo(after.bow()) != 0) {
            changed.add(before.bow().mm() + " → " + after.bow().mm() + " mm");
        }
        return String.join(", ", changed);
    }

    /** Corrects the shape of a free sheet. */
    public void reshape(SheetId id, Outline outline, long version, String who) {
        Sheet before = get(id);
        requirePossible(outline, before.facts(), before.cost());
        if (!sheets.reshape(id, outline.atOrigin(), version)) {
            throw new Refused("sheets.changed.meanwhile", id.toString());
        }
        sheets.note(id, "reshaped", "", who, now());
    }

    /** Throws a free sheet away (or notes that it is lost); what it carried is lost with it. */
    public void scrap(SheetId id, String why, String who) {
        turn(id, SheetState.SCRAPPED);
        sheets.note(id, "scrapped", why, who, now());
    }

    /** A scrapped sheet was found again. */
    public void bringBack(SheetId id, String who) {
        if (sheets.lock(id).orElseThrow(() -> unknown(id)) != SheetState.SCRAPPED) {
            throw new Refused("sheets.bringback.notscrapped", id.toString());
        }
        sheets.turn(id, SheetState.FREE, now());
        sheets.note(id, "broughtback", "", who, now());
    }

    private void turn(SheetId id, SheetState next) {
        SheetState state = sheets.lock(id).orElseThrow(() -> unknown(id));
        if (!state.next().contains(next)) {
            throw new Refused("sheets.state.not", id.toString());
        }
        sheets.turn(id, next, now());
    }

    /**
     * Holds a sheet for an order, with the blank lying there. Of many at a time exactly one succeeds.
     *
     * @throws SheetTaken when it is no longer free
     * @throws Refused when the blank does not fit there, or the board may not be cut at all
     */
    public void reserve(SheetId id, long orderId, Placement placement, Size blank, String who) {
        SheetState state = sheets.lock(id).orElseThrow(() -> unknown(id));
        if (state != SheetState.FREE) {
            throw new SheetTaken(id, cuts.holder(id).map(orders::shown));
        }
        Sheet sheet = get(id);
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
    public void release(long orderId, String who) {
        for (SheetId id : cuts.reservedFor(orderId)) {
            sheets.lock(id);
            Optional<Reservation> held = get(id).reservation();
            if (held.isPresent() && held.get().orderId() == orderId) {
                cuts.end(held.get().id(), "RELEASED", now());
                sheets.turn(id, SheetState.FREE, now());
                sheets.note(id, "released", orders.shown(orderId), who, now());
            }
        }
    }

    /** What would be left of a reserved sheet: the proposal to confirm or correct when it is cut. */
    @Transactional(readOnly = true)
    public Remainder proposal(SheetId id) {
        Sheet sheet = get(id);
        Reservation held = sheet.reservation().orElseThrow(() -> new Refused("sheets.cut.notreserved", id.toString()));
        return Remainder.after(
                sheet.outline(), held.blank(), held.placement(), settings.rules().kerf(), finder.sizes());
    }

    /** Cuts every sheet held for the order, keeping the useful parts of each remainder at its old place. */
    public List<Cut> cut(long orderId, String who) {
        List<Cut> done = new ArrayList<>();
        for (SheetId id : cuts.reservedFor(orderId)) {
            List<Outline> kept = proposal(id).parts().stream()
                    .filter(part -> !part.isScrap())
                    .map(Remainder.Part::outline)
                    .toList();
            done.add(cut(id, kept, get(id).facts().place(), who));
        }
        return done;
    }

    /**
     * Cuts the blank from a reserved sheet.
     *
     * @param kept what is kept of the remainder, in the sheet's coordinates; the rest is scrap
     * @param place where the offcuts are put
     */
    public Cut cut(SheetId id, List<Outline> kept, String place, String who) {
        sheets.lock(id).orElseThrow(() -> unknown(id));
        Sheet sheet = get(id);
        Reservation held = sheet.reservation().orElseThrow(() -> new Refused("sheets.cut.notreserved", id.toString()));
        Remainder rest = proposal(id);
        rest.requireHolds(kept, () -> new Refused("sheets.cut.offcutoutside", id.toString()));
        RackRules rules = settings.rules();
        List<Area> areas = kept.stream().map(Outline::area).toList();
        double scrap = sheet.outline().area().mm2() - held.blank().area().mm2()
                - areas.stream().mapToDouble(Area::mm2).sum();
        CostSplit split = CostSplit.of(
                sheet.cost(), held.blank().area(), areas, Area.mm2(Math.max(0, scrap)), rules.offcutCost(), rules.share());
        cuts.end(held.id(), "CUT", now());
        sheets.turn(id, SheetState.USED, now());
        long cut = cuts.cut(held, split, sheet.cost(), rules.offcutCost(), who, now());
        BoardFacts facts = sheet.facts().at(place).noted("");
        for (int i = 0; i < kept.size(); i++) {
            add(kept.get(i), facts, split.offcuts().get(i), OptionalLong.of(cut), "offcut", id.toString(), who);
        }
        sheets.note(id, "cut", orders.shown(held.orderId()), who, now());
        return cuts.find(cut).orElseThrow();
    }

    /** Takes a mistaken cut back: the sheet is held for the order again, its offcuts never were. */
    public void undo(long cutId, String who) {
        Cut cut = cuts.find(cutId).orElseThrow(() -> new Refused("sheets.undo.unknown"));
        sheets.lock(cut.sheet());
        if (cuts.find(cutId).orElseThrow().undone()) {
            throw new Refused("sheets.undo.already");
        }
        for (SheetId offcut : cut.offcuts()) {
            if (sheets.lock(offcut).orElseThrow() != SheetState.FREE) {
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

    @Transactional(readOnly = true)
    public Optional<Sheet> find(SheetId id) {
        return sheets.find(id);
    }

    private Sheet get(SheetId id) {
        return sheets.find(id).orElseThrow(() -> unknown(id));
    }

    /** Newest first. */
    @Transactional(readOnly = true)
    public List<Sheet> list(RackFilter filter, int offset, int limit) {
        return sheets.list(filter, holding(filter), offset, limit);
    }

    @Transactional(readOnly = true)
    public int count(RackFilter filter) {
        return sheets.count(filter, holding(filter));
    }

    private Optional<Set<Long>> holding(RackFilter filter) {
        Set<SheetState> states = filter.states().isEmpty() ? Set.of(SheetState.values()) : filter.states();
        return filter.fits().map(size -> finder.holding(size, states));
    }

    /** The sheets held for an order now. */
    @Transactional(readOnly = true)
    public List<Sheet> reservedFor(long orderId) {
        return cuts.reservedFor(orderId).stream().map(this::get).toList();
    }

    /** The cuts that stand for an order: what its blanks carry in cost, and what was scrapped with them. */
    @Transactional(readOnly = true)
    public List<Cut> cutsOf(long orderId) {
        return cuts.ofOrder(orderId);
    }

    @Transactional(readOnly = true)
    public Optional<Cut> cutOf(SheetId id) {
        return cuts.standing(id);
    }

    @Transactional(readOnly = true)
    public List<SheetId> children(SheetId id) {
        return sheets.children(id);
    }

    @Transactional(readOnly = true)
    public Optional<SheetId> parent(Sheet sheet) {
        return sheet.fromCut().isPresent() ? sheets.parent(sheet.fromCut().getAsLong()) : Optional.empty();
    }

    /** Newest first, at most 200 lines. */
    @Transactional(readOnly = true)
    public List<HistoryLine> history(SheetId id) {
        return sheets.history(id);
    }

    /** @param jpeg at most 8 MB */
    public void photo(SheetId id, byte[] jpeg, String who) {
        sheets.photo(id, jpeg, now());
        sheets.note(id, "photo", "", who, now());
    }

    @Transactional(readOnly = true)
    public Optional<byte[]> photo(SheetId id) {
        return sheets.photo(id);
    }

    /** Places on the rack in use, for choosing. */
    @Transactional(readOnly = true)
    public List<String> places() {
        return sheets.places();
    }

    /** What kinds of board lie in the rack, the kind with most free sheets first. */
    @Transactional(readOnly = true)
    public List<StockedKind> kinds() {
        return sheets.kinds();
    }

    /** Nominal thicknesses in the rack, in mm, for choosing. */
    @Transactional(readOnly = true)
    public List<Double> thicknesses() {
        return sheets.thicknesses();
    }

    private static Refused unknown(SheetId id) {
        return new Refused("sheets.unknown", id.toString());
    }

    private Instant now() {
        return clock.instant();
    }
}
