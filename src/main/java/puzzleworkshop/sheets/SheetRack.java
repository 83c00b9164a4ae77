package puzzleworkshop.sheets;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Remainder;
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
    private final SheetCutting cutting;
    private final SheetFollows follows;
    private final BoardLimits limits;
    private final SheetFinder finder;
    private final Photos photos;
    private final Clock clock;

    SheetRack(
            SheetStore sheets,
            CutStore cuts,
            SheetCutting cutting,
            SheetFollows follows,
            BoardLimits limits,
            SheetFinder finder,
            Photos photos,
            Clock clock) {
        this.sheets = sheets;
        this.cuts = cuts;
        this.cutting = cutting;
        this.follows = follows;
        this.limits = limits;
        this.finder = finder;
        this.photos = photos;
        this.clock = clock;
    }

    /** Takes a board in. Its outline is moved to the origin, its cost rounded to what can be paid. */
    public SheetId add(Outline outline, BoardFacts facts, Money cost, String who) {
        return add(outline, facts, cost, "entered", facts.place(), who);
    }

    SheetId add(Outline outline, BoardFacts facts, Money cost, String what, String detail, String who) {
        requirePossible(outline, facts, cost);
        SheetId id = sheets.add(outline.atOrigin(), facts, cost.rounded(), OptionalLong.empty(), now());
        sheets.note(id, what, detail, who, now());
        return id;
    }

    /** Refuses boards that cannot be: too large, too thick, an unknown material, a negative cost. */
    void requirePossible(Outline outline, BoardFacts facts, Money cost) {
        limits.requireReached(outline);
        limits.requireTrue(facts, cost);
    }

    /**
     * Refuses a shape that no machine reaches.
     *
     * @throws puzzleworkshop.geometry.ImpossibleOutline with the corner that lies farthest outside
     */
    @Transactional(readOnly = true)
    public void requireReached(Outline outline) {
        limits.requireReached(outline);
    }

    /** @param version the sheet had when it was read; a change by someone else meanwhile is refused */
    public void change(SheetId id, BoardFacts facts, Money cost, long version, String who) {
        Sheet before = sheets.get(id);
        limits.requireTrue(facts, cost);
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
        limits.requireReached(outline);
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
        if (sheets.hold(id) != SheetState.SCRAPPED) {
            throw new Refused("sheets.bringback.notscrapped", id.toString());
        }
        sheets.turn(id, SheetState.FREE, now());
        sheets.note(id, "broughtback", "", who, now());
    }

    private void turn(SheetId id, SheetState next) {
        SheetState state = sheets.hold(id);
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
        cutting.reserve(id, orderId, placement, blank, who);
    }

    /**
     * Plans a further blank on a held sheet: it is held on what the first leaves, when that is cut.
     *
     * @param position of the blank within its order
     * @throws Refused when the sheet is not held or the place is taken
     */
    public void follow(SheetId id, long orderId, int position, Placement placement, Size blank, String who) {
        follows.add(id, orderId, position, placement, blank, who);
    }

    /** The blank no longer waits for what another leaves. */
    public void unfollow(FollowingBlank blank) {
        follows.drop(blank.orderId(), blank.position());
    }

    /** All blanks that wait for what a held sheet leaves. */
    @Transactional(readOnly = true)
    public List<FollowingBlank> following() {
        return follows.all();
    }

    /** Sets all sheets held for an order free again (those who followed on them get them); none is fine. */
    public void release(long orderId, String who) {
        cutting.release(orderId, who);
    }

    /** What would be left of a reserved sheet: the proposal to confirm or correct when it is cut. */
    @Transactional(readOnly = true)
    public Remainder proposal(SheetId id) {
        return cutting.proposal(id);
    }

    /** Cuts every sheet held for the order, keeping the useful parts of each remainder at its old place. */
    public List<Cut> cut(long orderId, String who) {
        return cutting.cut(orderId, who);
    }

    /**
     * Cuts the blank from a reserved sheet.
     *
     * @param kept what is kept of the remainder, in the sheet's coordinates; the rest is scrap
     * @param place where the offcuts are put
     */
    public Cut cut(SheetId id, List<Outline> kept, String place, String who) {
        return cutting.cut(id, kept, place, who);
    }

    /** Takes a mistaken cut back: the sheet is held for the order again, its offcuts never were. */
    public void undo(long cutId, String who) {
        cutting.undo(cutId, who);
    }

    @Transactional(readOnly = true)
    public Optional<Sheet> find(SheetId id) {
        return sheets.find(id);
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
        return cuts.reservedFor(orderId).stream().map(sheets::get).toList();
    }

    /** The same for many orders at once; those that hold none are left out. */
    @Transactional(readOnly = true)
    public Map<Long, List<Sheet>> reservedFor(Collection<Long> orders) {
        Map<Long, List<SheetId>> held = cuts.reservedFor(orders);
        Map<SheetId, Sheet> known = sheets
                .all(held.values().stream().flatMap(List::stream).toList())
                .stream()
                .collect(Collectors.toMap(Sheet::id, Function.identity()));
        Map<Long, List<Sheet>> boards = new HashMap<>();
        held.forEach(
                (order, ids) -> boards.put(order, ids.stream().map(known::get).toList()));
        return boards;
    }

    /** Those of the orders for which a board has been cut. */
    @Transactional(readOnly = true)
    public Set<Long> withCuts(Collection<Long> orders) {
        return cuts.withCuts(orders);
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

    /**
     * Keeps a photo of a sheet in place of the one there was.
     *
     * @param file as the phone or browser sends it
     * @throws Refused when it is no photo
     */
    public void photo(SheetId id, byte[] file, String who) {
        sheets.photo(id, photos.kept(file), now());
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

    private Instant now() {
        return clock.instant();
    }
}
