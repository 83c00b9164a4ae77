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
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardLimits;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.SignedIn;

/**
 * The rack: takes sheets in, corrects them, throws them away, and says what it holds. Every change leaves a history line.
 * Which order gets a sheet is decided above, in the room boards.
 */
@Service
@Transactional
public class SheetRack {

    private final SheetStore sheets;
    private final CutStore cuts;
    private final BoardLimits limits;
    private final RackIndex index;
    private final RackSettings settings;
    private final Photos photos;
    private final Bookings bookings;
    private final SignedIn signedIn;
    private final Clock clock;

    SheetRack(
            SheetStore sheets,
            CutStore cuts,
            BoardLimits limits,
            RackIndex index,
            RackSettings settings,
            Photos photos,
            Bookings bookings,
            SignedIn signedIn,
            Clock clock) {
        this.signedIn = signedIn;
        this.bookings = bookings;
        this.sheets = sheets;
        this.cuts = cuts;
        this.limits = limits;
        this.index = index;
        this.settings = settings;
        this.photos = photos;
        this.clock = clock;
    }

    /** Takes in a board that somebody entered, once. Otherwise as {@link #add(Outline, BoardFacts, Money, String)}. */
    @Books
    public SheetId enter(BookingKey key, Outline outline, BoardFacts facts, Money cost, String who) {
        return bookings.once(
                key,
                "enter a board of " + outline.area() + ", " + facts + ", " + cost,
                () -> add(outline, facts, cost, who),
                SheetId::value,
                SheetId::new);
    }

    /** Takes a board in. Its outline is moved to the origin, its cost rounded to what can be paid. */
    public SheetId add(Outline outline, BoardFacts facts, Money cost, String who) {
        return add(outline, facts, cost, "entered", facts.place(), who);
    }

    public SheetId add(Outline outline, BoardFacts facts, Money cost, String what, String detail, String who) {
        requirePossible(outline, facts, cost);
        SheetId id = sheets.add(outline.atOrigin(), facts, cost.rounded(), OptionalLong.empty(), now());
        sheets.note(id, what, detail, who, now());
        return id;
    }

    /** Refuses boards that cannot be: too large, too thick, an unknown material, a negative cost. */
    public void requirePossible(Outline outline, BoardFacts facts, Money cost) {
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

    /**
     * @param cost what it carries; a maker does not see it, and it stays as it is
     * @param version the sheet had when it was read; a change by someone else meanwhile is refused
     */
    public void change(SheetId id, BoardFacts facts, Money cost, long version, String who) {
        Sheet before = sheets.get(id);
        Money carried = signedIn.isMaker() ? before.cost() : cost;
        limits.requireTrue(facts, carried);
        if (facts.equals(before.facts())
                && carried.rounded().equals(before.cost().rounded())) {
            return; // saved as it was: its history tells what happened to it
        }
        if (!sheets.change(id, facts, carried.rounded(), version)) {
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
        if (sheets.locked(id) != SheetState.SCRAPPED) {
            throw new Refused("sheets.bringback.notscrapped", id.toString());
        }
        sheets.turn(id, SheetState.FREE, now());
        sheets.note(id, "broughtback", "", who, now());
    }

    private void turn(SheetId id, SheetState next) {
        SheetState state = sheets.locked(id);
        if (!state.next().contains(next)) {
            throw new Refused("sheets.state.not", id.toString());
        }
        sheets.turn(id, next, now());
    }

    @Transactional(readOnly = true)
    public Optional<Sheet> find(SheetId id) {
        return sheets.find(id);
    }

    /** Another text as soon as any sheet has come, changed or gone. */
    @Transactional(readOnly = true)
    public String stamp() {
        return sheets.stamp();
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
        return filter.fits().map(size -> index.holding(size, sheets.candidates(states), settings.sizes()));
    }

    /** The sheets held for an order now. */
    @Transactional(readOnly = true)
    public List<Sheet> heldFor(OrderId order) {
        return cuts.heldFor(order).stream().map(sheets::get).toList();
    }

    /** The same for many orders at once; those that hold none are left out. */
    @Transactional(readOnly = true)
    public Map<OrderId, List<Sheet>> heldFor(Collection<OrderId> orders) {
        Map<OrderId, List<SheetId>> held = cuts.heldFor(orders);
        Map<SheetId, Sheet> known = sheets
                .all(held.values().stream().flatMap(List::stream).toList())
                .stream()
                .collect(Collectors.toMap(Sheet::id, Function.identity()));
        Map<OrderId, List<Sheet>> boards = new HashMap<>();
        held.forEach(
                (order, ids) -> boards.put(order, ids.stream().map(known::get).toList()));
        return boards;
    }

    /** Numbers of the sheets held, by order. */
    @Transactional(readOnly = true)
    public Map<OrderId, List<SheetId>> heldIds(Collection<OrderId> orders) {
        return cuts.heldFor(orders);
    }

    /** Numbers of the sheets that were cut for them, by order. */
    @Transactional(readOnly = true)
    public Map<OrderId, Set<SheetId>> cutIds(Collection<OrderId> orders) {
        return cuts.cutFor(orders);
    }

    /** Those of the orders for which a board has been cut. */
    @Transactional(readOnly = true)
    public Set<OrderId> withCuts(Collection<OrderId> orders) {
        return cuts.withCuts(orders);
    }

    /** The cuts that stand for an order: what its blanks carry in cost, and what was scrapped with them. */
    @Transactional(readOnly = true)
    public List<Cut> cutsOf(OrderId order) {
        return cuts.ofOrder(order);
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
    public List<SheetHistoryLine> history(SheetId id) {
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
