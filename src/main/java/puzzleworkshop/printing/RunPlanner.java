package puzzleworkshop.printing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.packing.PackItem;
import puzzleworkshop.geometry.packing.Packed;
import puzzleworkshop.geometry.packing.PackedAt;
import puzzleworkshop.geometry.packing.RectanglePacker;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.media.PrintMedium;

/**
 * Lays prints out on a medium: those that must go first, then as many of the others, earliest due first, as fit without
 * another sheet (or, on a roll, without more length).
 */
final class RunPlanner {

    private static final long EFFORT = 60_000_000;
    private static final long EFFORT_OF_A_TRY = 4_000_000;
    private static final int MOST_TRIES = 60;
    private static final double ROUNDING = 0.002;

    private final PrintMedium medium;

    RunPlanner(PrintMedium medium) {
        this.medium = medium;
    }

    /** A layout and what is known about the best one; lengths from edge to edge of the sheet or roll. */
    record Plan(List<RunItem> items, int sheets, int fewestSheets, Length length, Length leastLength) {}

    /** Lays all of them out; pinned ones stay. */
    Plan layOut(List<RunItem> items) {
        return plan(items, pack(items, EFFORT));
    }

    /** Lays out what must go, then fills up from the others. */
    Plan fill(List<RunItem> must, List<RunItem> others) {
        Packed first = pack(must, EFFORT);
        List<RunItem> taken = new ArrayList<>(must);
        Packed best = first;
        int tries = 0;
        for (RunItem other : others) {
            if (must.isEmpty() || tries++ >= MOST_TRIES) {
                break;
            }
            List<RunItem> more = new ArrayList<>(taken);
            more.add(other);
            if (area(more) > roomOf(first)) {
                continue;
            }
            Packed packed = pack(more, EFFORT_OF_A_TRY);
            if (packed.sheets() <= first.sheets() && (!roll() || packed.length() <= first.length() + ROUNDING)) {
                taken = more;
                best = packed;
            }
        }
        return plan(taken, best);
    }

    /** Whether a print may lie at a place: inside the sheet's room and a gap away from every other. */
    boolean free(RunItem item, List<RunItem> others) {
        double inset = medium.inset().mm();
        Size footprint = item.footprint();
        double right = item.x().mm() + footprint.width().mm();
        double bottom = item.y().mm() + footprint.height().mm();
        boolean inside = item.x().mm() >= inset - ROUNDING
                && item.y().mm() >= inset - ROUNDING
                && right <= medium.size().width().mm() - inset + ROUNDING
                && bottom <= medium.size().height().mm() - inset + ROUNDING;
        return inside && others.stream().noneMatch(other -> other.sheet() == item.sheet() && tooNear(item, other));
    }

    private boolean tooNear(RunItem a, RunItem b) {
        return apart(a.x(), a.footprint().width(), b.x(), b.footprint().width())
                        < medium.gap().mm() - ROUNDING
                && apart(a.y(), a.footprint().height(), b.y(), b.footprint().height())
                        < medium.gap().mm() - ROUNDING;
    }

    private static double apart(Length a, Length aSize, Length b, Length bSize) {
        return Math.max(b.mm() - a.mm() - aSize.mm(), a.mm() - b.mm() - bSize.mm());
    }

    /** Numbers and lengths of a layout that somebody changed by hand; bounds stay those of the prints. */
    Plan measured(List<RunItem> items) {
        Packed bounds = pack(items.stream().map(item -> item.pinned(false)).toList(), EFFORT_OF_A_TRY);
        int sheets = items.stream().mapToInt(RunItem::sheet).max().orElse(-1) + 1;
        double reach = items.stream()
                .mapToDouble(item -> item.y().mm() + item.footprint().height().mm())
                .max()
                .orElse(0);
        Length length =
                roll() ? Length.mm(reach + medium.inset().mm()) : medium.size().height();
        return new Plan(
                items, sheets, Math.min(sheets, bounds.fewestSheets()), length, edgeToEdge(bounds.leastLength()));
    }

    private Packed pack(List<RunItem> items, long effort) {
        List<PackItem> pieces = items.stream()
                .map(item -> PackItem.of(
                        item.sticker().width().mm(),
                        item.sticker().height().plus(PrintMedium.LABEL).mm()))
                .toList();
        double inset = medium.inset().mm();
        List<PackedAt> pins = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            RunItem item = items.get(i);
            if (item.pinned()) {
                pins.add(new PackedAt(
                        i, item.sheet(), item.x().mm() - inset, item.y().mm() - inset, item.turned()));
            }
        }
        RectanglePacker packer = RectanglePacker.withGap(medium.gap().mm()).effort(effort);
        Size room = medium.room();
        return roll()
                ? packer.onRoll(pieces, room.width().mm(), pins)
                : packer.onSheets(pieces, room.width().mm(), room.height().mm(), pins);
    }

    private Plan plan(List<RunItem> items, Packed packed) {
        double inset = medium.inset().mm();
        List<RunItem> laid = new ArrayList<>();
        for (PackedAt spot : packed.spots()) {
            RunItem item = items.get(spot.piece());
            laid.add(item.pinned() ? item : item.at(spot.sheet(), spot.x() + inset, spot.y() + inset, spot.turned()));
        }
        Length length = roll() ? edgeToEdge(packed.length()) : medium.size().height();
        return new Plan(laid, packed.sheets(), packed.fewestSheets(), length, edgeToEdge(packed.leastLength()));
    }

    private Length edgeToEdge(double used) {
        return used <= 0 ? Length.ZERO : Length.mm(used).plus(medium.inset().times(2));
    }

    private double area(List<RunItem> items) {
        return items.stream().mapToDouble(item -> item.footprint().area().mm2()).sum();
    }

    private double roomOf(Packed packed) {
        double length = roll() ? packed.length() : medium.room().height().mm();
        return packed.sheets() * medium.room().width().mm() * length;
    }

    private boolean roll() {
        return medium.kind() == PrintMedium.Kind.ROLL;
    }

    /** A print to be laid out, not yet anywhere. */
    static RunItem unplaced(Copy copy) {
        PrintItem item = copy.item();
        return new RunItem(
                0,
                item.order(),
                copy.number(),
                item.look(),
                item.finished(),
                item.overhang(),
                item.due(),
                0,
                Length.ZERO,
                Length.ZERO,
                false,
                false,
                RunItem.Outcome.PLANNED,
                "");
    }

    static Optional<RunItem> byId(List<RunItem> items, long id) {
        return items.stream().filter(item -> item.id() == id).findFirst();
    }
}
