package puzzleworkshop.geometry.packing;

import java.util.SplittableRandom;

/**
 * The shortest piece of a roll: quick layouts first, then lengths below the best found are tried as sheets of that
 * length, the bound first and after it by halving, each with a share of the effort.
 */
final class StripSearch {

    private static final int UNBOUNDED = Integer.MAX_VALUE / 2;
    private static final int EXHAUSTIVE_UP_TO = 36;
    private static final int CERTAIN_UP_TO = 10;

    private final ItemShapes shapes;
    private final int width;
    private final WorkBudget effort;
    private final SplittableRandom random;
    private final TransposedFill fill;
    Layout best;
    int bestLength = UNBOUNDED;
    int bound;

    StripSearch(ItemShapes shapes, int width, WorkBudget effort, long seed) {
        this.shapes = shapes;
        this.width = width;
        this.effort = effort;
        this.random = new SplittableRandom(seed);
        this.fill = new TransposedFill(shapes, effort);
    }

    void search() {
        bound = LowerBounds.length(shapes, width);
        quickLayouts();
        long share = Math.max(effort.left() / 24, 1);
        if (bestLength > bound) {
            reach(bound, share);
        }
        if (bestLength > bound && shapes.count <= EXHAUSTIVE_UP_TO) {
            exhaustively(bound, effort.left() / 3);
        }
        if (bestLength > bound && shapes.count <= CERTAIN_UP_TO) {
            proveOrShorten();
        }
        int below = bound;
        while (bestLength > bound && !effort.spent()) {
            int target = (below + bestLength - 1) / 2;
            if (target >= bestLength || bestLength - below <= Math.max(1, bound / 2000)) {
                below = bound;
                target = bestLength - 1;
                share *= 2;
            }
            if (!reach(target, Math.min(share, effort.left()))) {
                below = Math.max(below, target + 1);
            }
        }
    }

    private void quickLayouts() {
        for (int[] order : ItemOrders.sorted(shapes)) {
            for (SkylineBestFit.Taste taste : SkylineBestFit.Taste.values()) {
                Layout layout = new Layout(shapes.count);
                fill.fill(true, width, UNBOUNDED, order, order.length, taste, layout, 0);
                keep(layout);
            }
        }
    }

    private void exhaustively(int length, long looks) {
        WorkBudget half = new WorkBudget(looks / 40);
        Layout found = new PerfectFill(shapes, width, length, half).search();
        effort.spend(half.used * 20);
        if (found == null) {
            WorkBudget other = new WorkBudget(looks / 40);
            Layout across = new PerfectFill(shapes.transposed(), length, width, other).search();
            effort.spend(other.used * 20);
            found = across == null ? null : transposed(across);
        }
        if (found != null) {
            keep(found);
        }
    }

    /** For a few pieces: one unit shorter is either laid out or shown to be impossible. */
    private void proveOrShorten() {
        long stop = effort.left() / 2;
        while (bestLength > bound && effort.left() > stop) {
            WorkBudget share = new WorkBudget(effort.left() - stop);
            CornerSearch corners = new CornerSearch(shapes, width, bestLength - 1, share);
            CornerSearch.Answer answer = corners.search();
            effort.spend(share.used);
            if (answer == CornerSearch.Answer.YES) {
                keep(corners.layout);
            } else {
                bound = answer == CornerSearch.Answer.NO ? bestLength : bound;
                return;
            }
        }
    }

    private Layout transposed(Layout from) {
        Layout to = new Layout(shapes.count);
        for (int i = 0; i < shapes.count; i++) {
            to.put(i, from.sheet[i], from.y[i], from.x[i], from.turned[i]);
        }
        return to;
    }

    private void keep(Layout layout) {
        int length = layout.length(shapes, 0);
        if (length < bestLength) {
            bestLength = length;
            best = layout.copy();
        }
    }

    /** Tries to place everything within a length by swaps in the order of pieces that never lose placed area. */
    private boolean reach(int length, long looks) {
        long stop = effort.used + looks;
        long whole = shapes.totalArea();
        int n = shapes.count;
        Layout layout = new Layout(n);
        int[] trial = new int[n];
        while (effort.used < stop) {
            int[] order = ItemOrders.sorted(shapes).get(random.nextInt(4)).clone();
            boolean up = random.nextBoolean();
            SkylineBestFit.Taste taste = SkylineBestFit.Taste.values()[random.nextInt(3)];
            if (taste != SkylineBestFit.Taste.CLOSES) {
                taste = random.nextBoolean() ? SkylineBestFit.Taste.CLOSES : taste;
            }
            long area = fill.fill(up, width, length, order, n, taste, layout, 0);
            int stale = 0;
            while (area < whole && stale < 30 * n && effort.used < stop) {
                System.arraycopy(order, 0, trial, 0, n);
                if (random.nextBoolean()) {
                    ItemOrders.swap(trial, random.nextInt(n), random.nextInt(n));
                } else {
                    ItemOrders.move(trial, random.nextInt(n), random.nextInt(n));
                }
                long now = fill.fill(up, width, length, trial, n, taste, layout, 0);
                stale = now > area ? 0 : stale + 1;
                if (now >= area) {
                    area = now;
                    System.arraycopy(trial, 0, order, 0, n);
                }
            }
            if (area == whole) {
                fill.fill(up, width, length, order, n, taste, layout, 0);
                keep(layout);
                return true;
            }
        }
        return false;
    }
}
