package puzzleworkshop.sheets;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.RectanglePlaces;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.CostSplit;
import puzzleworkshop.sheets.board.RackSettings;

/**
 * What happens to one sheet for an order: held, set free, cut, and a mistaken cut taken back. Each command locks the sheet's
 * row; what it means for the order, and in which order rows are locked, is decided by the room boards, the only one that
 * calls these commands ({@code PackageRules}).
 */
@Service
@Transactional
public class SheetHolds {

    private static final int MOST_RESTS = 500;

    private final SheetStore sheets;
    private final CutStore cuts;
    private final RackSettings settings;
    private final Clock clock;
    /** A cut asks for it to propose it, to hold what is kept against it, and once more for its costs. */
    private final VersionedCache<Blank, Remainder> rests =
            VersionedCache.<Blank, Remainder>ofMost(MOST_RESTS).restingOnTheQuestion();

    private record Blank(Outline board, Size blank, Placement placement, Length kerf, UsefulSizes sizes) {

        Remainder rest() {
            return Remainder.after(board, blank, placement, kerf, sizes);
        }
    }

    SheetHolds(SheetStore sheets, CutStore cuts, RackSettings settings, Clock clock) {
        this.sheets = sheets;
        this.cuts = cuts;
        this.settings = settings;
        this.clock = clock;
    }

    /** Locks the sheet's row until the caller's transaction ends, and says how it stands. */
    public SheetState lock(SheetId id) {
        return sheets.locked(id);
    }

    /** The sheets held for an order, in the order in which they were. */
    @Transactional(readOnly = true)
    public List<SheetId> heldFor(OrderId order) {
        return cuts.heldFor(order);
    }

    /**
     * Holds a sheet for an order, with the blank lying there. Of many at a time exactly one succeeds.
     *
     * @throws SheetTaken when it is no longer free
     * @throws Refused when the blank does not fit there, or the board may not be cut at all
     */
    public void hold(SheetId id, OrderRef order, Placement placement, Size blank, String who) {
        SheetState state = sheets.locked(id);
        if (state != SheetState.FREE) {
            throw new SheetTaken(id, cuts.holder(id).map(OrderRef::number));
        }
        Sheet sheet = sheets.get(id);
        if (!sheet.facts().past().isFitForCutting()) {
            throw new Refused("sheets.whynot.past." + sheet.facts().past().name());
        }
        if (!RectanglePlaces.accepts(sheet.outline(), blank, placement)) {
            throw new Refused("sheets.place.outside", blank, id.toString());
        }
        sheets.turn(id, SheetState.RESERVED, now());
        cuts.reserve(id, order.id(), placement, blank, who, now());
        sheets.note(id, "reserved", order.number(), who, now());
    }

    /** Sets a held sheet free again. */
    public void release(SheetId id, String who) {
        Reservation held = held(locked(id));
        cuts.end(held.id(), "RELEASED", now());
        sheets.turn(id, SheetState.FREE, now());
        sheets.note(id, "released", held.order().number(), who, now());
    }

    /** What would be left of a held sheet: the proposal to confirm or correct when it is cut. */
    @Transactional(readOnly = true)
    public Remainder proposal(SheetId id) {
        return rest(sheets.get(id));
    }

    private Remainder rest(Sheet sheet) {
        Reservation held = held(sheet);
        Blank blank = new Blank(
                sheet.outline(),
                held.blank(),
                held.placement(),
                settings.rules().kerf(),
                settings.sizes());
        return rests.get(blank, blank::rest);
    }

    /**
     * Cuts the blank from a held sheet.
     *
     * @param kept what is kept of the remainder, in the sheet's coordinates; the rest is scrap
     * @param place where the offcuts are put
     */
    public Cut cut(SheetId id, List<Outline> kept, String place, String who) {
        Sheet sheet = locked(id);
        OrderRef order = held(sheet).order();
        Cut cut = cut(sheet, Optional.of(order.id()), kept, place, who);
        sheets.note(id, "cut", order.number(), who, now());
        return cut;
    }

    /** The blank of a held sheet is spoiled: it is cut off for nobody, what is kept goes back to the rack. */
    public Cut spoil(SheetId id, List<Outline> kept, String place, String why, String who) {
        Cut cut = cut(locked(id), Optional.empty(), kept, place, who);
        sheets.note(id, "spoiled", why, who, now());
        return cut;
    }

    /** What the blank of a held sheet carries of its cost, when so much of the remainder is kept. */
    @Transactional(readOnly = true)
    public Money blankCost(SheetId id, List<Outline> kept) {
        Sheet sheet = sheets.get(id);
        return split(sheet, held(sheet), kept).blank();
    }

    private CostSplit split(Sheet sheet, Reservation held, List<Outline> kept) {
        return CostSplit.after(sheet.cost(), sheet.outline(), held.blank(), kept, settings.rules());
    }

    private Sheet locked(SheetId id) {
        sheets.locked(id);
        return sheets.get(id);
    }

    private Cut cut(Sheet sheet, Optional<OrderId> order, List<Outline> kept, String place, String who) {
        SheetId id = sheet.id();
        Reservation held = held(sheet);
        rest(sheet).requireHolds(kept, () -> new Refused("sheets.cut.offcutoutside", id.toString()));
        CostSplit split = split(sheet, held, kept);
        cuts.end(held.id(), "CUT", now());
        sheets.turn(id, SheetState.USED, now());
        long cut = cuts.cut(held, order, split, sheet.cost(), settings.rules().offcutCost(), who, now());
        BoardFacts facts = sheet.facts().at(place).noted("");
        for (int i = 0; i < kept.size(); i++) {
            SheetId offcut = sheets.add(
                    kept.get(i).atOrigin(), facts, split.offcuts().get(i).rounded(), OptionalLong.of(cut), now());
            sheets.note(offcut, "offcut", id.toString(), who, now());
        }
        return cuts.find(cut).orElseThrow();
    }

    /** The cut as it stands on record. */
    @Transactional(readOnly = true)
    public Cut find(long cutId) {
        return cuts.find(cutId).orElseThrow(() -> new Refused("sheets.undo.unknown"));
    }

    /**
     * Takes a mistaken cut back: the sheet is held for the order again, its offcuts never were.
     *
     * @throws Refused when it was taken back already, or an offcut is in use
     */
    public void undo(long cutId, String who) {
        Cut cut = find(cutId);
        sheets.locked(cut.sheet());
        if (find(cutId).undone()) {
            throw new Refused("sheets.undo.already");
        }
        if (cut.order().isEmpty()) {
            throw new Refused("sheets.undo.spoiled");
        }
        for (SheetId offcut : cut.offcuts()) {
            if (sheets.locked(offcut) != SheetState.FREE) {
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

    /** A line in the sheet's history about an order that has its place on what is left of it. */
    public void note(SheetId id, Note what, OrderRef order, String who) {
        sheets.note(id, what.name().toLowerCase(java.util.Locale.ROOT), order.number(), who, now());
    }

    /** What may be noted about a sheet that is held for another. */
    public enum Note {
        FOLLOWED,
        UNFOLLOWED
    }

    private static Reservation held(Sheet sheet) {
        return sheet.reservation()
                .orElseThrow(
                        () -> new Refused("sheets.cut.notreserved", sheet.id().toString()));
    }

    private Instant now() {
        return clock.instant();
    }
}
