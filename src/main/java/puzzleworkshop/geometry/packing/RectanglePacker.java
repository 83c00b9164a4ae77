package puzzleworkshop.geometry.packing;

import java.util.List;

/**
 * Lays rectangles on sheets or on a roll, sides parallel to it, turned by 90° where a piece allows it.
 *
 * <p>Between two pieces at least the gap is kept; towards the edge of the sheet none is (give the printable part of a
 * sheet). Lengths are taken to a thousandth of a millimetre: pieces rounded up, sheets rounded down. The same input
 * always gives the same answer; the effort bounds the work, not the time (the usual effort is
 * at most a second on a strip and at most a few on sheets).
 */
public final class RectanglePacker {

    /** Looks at a piece that are spent when nothing else is said. */
    public static final long USUAL_EFFORT = 150_000_000;

    private static final long SEED = 20261125;

    private final double gap;
    private final long effort;

    private RectanglePacker(double gap, long effort) {
        if (!(gap >= 0) || effort < 1) {
            throw new IllegalArgumentException("The gap is at least 0 and the effort at least 1");
        }
        this.gap = gap;
        this.effort = effort;
    }

    /** A packer that keeps this gap between pieces, in millimetres. */
    public static RectanglePacker withGap(double gapMm) {
        return new RectanglePacker(gapMm, USUAL_EFFORT);
    }

    public RectanglePacker effort(long looks) {
        return new RectanglePacker(gap, looks);
    }

    /**
     * The fewest sheets that take all pieces.
     *
     * @param pins pieces that stay where the user put them; the rest is laid around them
     * @throws IllegalArgumentException when a piece is larger than a sheet, or a pin lies outside it or on another
     */
    public Packed onSheets(List<PackItem> pieces, double width, double height, List<PackedAt> pins) {
        if (pieces.isEmpty()) {
            return new Packed(List.of(), 0, 0, 0, 0);
        }
        IntegerScaling whole = new IntegerScaling(pieces, width, height, gap, !pins.isEmpty());
        WorkBudget budget = new WorkBudget(effort);
        if (!pins.isEmpty()) {
            PinnedSearch search = new PinnedSearch(whole, pins, new WorkBudget(effort / 5), SEED);
            int fewest = Math.max(LowerBounds.sheets(whole.shapes, whole.width, whole.height), search.pinnedSheets());
            search.search(fewest, 0);
            return whole.packed(search.best, search.bestSheets, fewest, 0);
        }
        SheetSearch search = new SheetSearch(whole.shapes, whole.width, whole.height, budget, SEED);
        search.search();
        return whole.packed(search.best, search.bestSheets, search.bound, 0);
    }

    /** The shortest piece of roll that takes all pieces; pins as in {@link #onSheets}. */
    public Packed onRoll(List<PackItem> pieces, double width, List<PackedAt> pins) {
        if (pieces.isEmpty()) {
            return new Packed(List.of(), 0, 0, 0, 0);
        }
        IntegerScaling whole = new IntegerScaling(pieces, width, Double.POSITIVE_INFINITY, gap, !pins.isEmpty());
        if (!pins.isEmpty()) {
            if (pins.stream().anyMatch(pin -> pin.sheet() != 0)) {
                throw new IllegalArgumentException("A roll has one sheet, 0");
            }
            PinnedSearch search = new PinnedSearch(whole, pins, new WorkBudget(effort / 5), SEED);
            long least = Math.max(LowerBounds.length(whole.shapes, whole.width), search.pinnedLength());
            search.search(1, least);
            return whole.packed(search.best, 1, 1, least);
        }
        StripSearch search = new StripSearch(whole.shapes, whole.width, new WorkBudget(effort / 4), SEED);
        search.search();
        return whole.packed(search.best, 1, 1, search.bound);
    }
}
