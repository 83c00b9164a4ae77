package puzzleworkshop.geometry.packing;

/**
 * What no layout can beat. Areas are first stretched by pairs of dual feasible functions, which count a side of more
 * than half a sheet as a whole one and a small one as nothing, and then compared with the stretched sheet. For a piece
 * that may be turned the smaller of its two stretched areas counts (on a square sheet their mean), so that the bound
 * holds however the pieces are turned.
 *
 * <p>Sources: Martello and Vigo, Management Science 44 (1998), bounds L1 to L3; Fekete and Schepers, Mathematical
 * Programming 91 (2001), dual feasible functions; for turned pieces Boschetti and Mingozzi, 4OR 1 (2003).
 */
final class LowerBounds {

    private static final int MOST_STEPS = 400;

    private LowerBounds() {}

    /** Fewest sheets of this size. */
    static int sheets(ItemShapes shapes, int width, int height) {
        if (shapes.count == 0) {
            return 0;
        }
        long best = 1;
        for (Stretch across : stretches(shapes, width)) {
            for (Stretch down : stretches(shapes, height)) {
                best = Math.max(
                        best,
                        ceil(
                                total(shapes, across, down, width == height),
                                Math.multiplyExact(across.of(width), down.of(height))));
            }
        }
        return (int) Math.max(best, apart(shapes, width, height));
    }

    /** Least length of a roll of this width. */
    static int length(ItemShapes shapes, int width) {
        long best = 0;
        for (int i = 0; i < shapes.count; i++) {
            boolean upright = shapes.width[i] <= width;
            boolean turned = shapes.turnable[i] && shapes.height[i] <= width;
            int needs = upright && turned
                    ? Math.min(shapes.width[i], shapes.height[i])
                    : upright ? shapes.height[i] : shapes.width[i];
            best = Math.max(best, needs);
        }
        Stretch plain = new Stretch(1, 0, 0);
        for (Stretch across : stretches(shapes, width)) {
            long sum = 0;
            for (int i = 0; i < shapes.count; i++) {
                sum += least(shapes, i, across, plain, width, Integer.MAX_VALUE);
            }
            best = Math.max(best, ceil(sum, across.of(width)));
        }
        return (int) best;
    }

    /**
     * The stretched area of all pieces: the smaller one of each piece's two ways up, or, on a square sheet, the mean over
     * the sheet seen as it is and transposed, which no turning changes. Both are bounds; the greater counts.
     */
    private static long total(ItemShapes shapes, Stretch across, Stretch down, boolean square) {
        long least = 0;
        long both = 0;
        for (int i = 0; i < shapes.count; i++) {
            least += least(shapes, i, across, down, across.full, down.full);
            if (square) {
                both += across.of(shapes.width[i]) * down.of(shapes.height[i])
                        + across.of(shapes.height[i]) * down.of(shapes.width[i]);
            }
        }
        return Math.max(least, (both + 1) / 2);
    }

    private static long least(ItemShapes shapes, int i, Stretch across, Stretch down, int width, int height) {
        int w = shapes.width[i];
        int h = shapes.height[i];
        long upright = w <= width && h <= height ? across.of(w) * down.of(h) : Long.MAX_VALUE;
        long turned = shapes.turns(i) && h <= width && w <= height ? across.of(h) * down.of(w) : Long.MAX_VALUE;
        return Math.min(upright, turned);
    }

    /** Pieces of which no two share a sheet: more than half a sheet in both directions, however turned. */
    private static int apart(ItemShapes shapes, int width, int height) {
        int alone = 0;
        for (int i = 0; i < shapes.count; i++) {
            boolean upright = shapes.width[i] > width - shapes.width[i] && shapes.height[i] > height - shapes.height[i];
            boolean turned = shapes.height[i] > width - shapes.height[i] && shapes.width[i] > height - shapes.width[i];
            if (upright && (turned || !shapes.turns(i))) {
                alone++;
            }
        }
        return alone;
    }

    private static long ceil(long sum, long whole) {
        return (sum + whole - 1) / whole;
    }

    private static Stretch[] stretches(ItemShapes shapes, int full) {
        java.util.TreeSet<Integer> thresholds = new java.util.TreeSet<>();
        for (int i = 0; i < shapes.count; i++) {
            for (int side : new int[] {shapes.width[i], shapes.height[i]}) {
                if (side <= full) {
                    thresholds.add(Math.min(side, full - side + 1));
                }
            }
        }
        java.util.List<Stretch> all = new java.util.ArrayList<>();
        all.add(new Stretch(full, 0, 0));
        for (int t : thresholds) {
            if (t >= 1 && 2L * t <= full && all.size() < MOST_STEPS) {
                all.add(new Stretch(full, t, 0));
                all.add(new Stretch(full, t, 1));
            }
        }
        return all.toArray(Stretch[]::new);
    }

    /**
     * One dual feasible function on sides 0..full. Kind 0: a side above full − step counts as full, one below step as
     * nothing (Fekete and Schepers' U). Kind 1: sides above half count by what they leave in whole steps, others in
     * whole steps (Boschetti and Mingozzi; Carlier, Clautiaux and Moukrim 2007, f2).
     */
    record Stretch(int full, int step, int kind) {

        long of(int side) {
            if (step == 0) {
                return side;
            }
            if (kind == 0) {
                return side > full - step ? full : side < step ? 0 : side;
            }
            long whole = full / step;
            if (2L * side > full) {
                return 2 * (whole - (full - side) / step);
            }
            return 2L * side == full ? whole : 2L * (side / step);
        }
    }
}
