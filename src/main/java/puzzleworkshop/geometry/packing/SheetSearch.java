package puzzleworkshop.geometry.packing;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * The fewest sheets. Quick layouts first; then, as long as the bound allows, one sheet less: the emptiest sheet is
 * dissolved and its pieces are worked into the others by taking one to three sheets at a time, laying them out anew
 * together with what is left over, and keeping that when less is left over (or, with a chance that falls, a little
 * more).
 *
 * <p>Idea: the goal-driven search of Wei, Oon, Zhu and Lim, European Journal of Operational Research 224 (2013).
 */
final class SheetSearch {

    private final ItemShapes shapes;
    private final int width;
    private final int height;
    private final WorkBudget effort;
    private final SplittableRandom random;
    private final TransposedFill fill;
    private final double[] keys;
    Layout best;
    int bestSheets = Integer.MAX_VALUE;
    int bound;

    SheetSearch(ItemShapes shapes, int width, int height, WorkBudget effort, long seed) {
        this.shapes = shapes;
        this.width = width;
        this.height = height;
        this.effort = effort;
        this.random = new SplittableRandom(seed);
        this.fill = new TransposedFill(shapes, effort);
        this.keys = new double[shapes.count];
    }

    void search() {
        bound = LowerBounds.sheets(shapes, width, height);
        for (int[] order : ItemOrders.sorted(shapes)) {
            for (SkylineBestFit.Taste taste : SkylineBestFit.Taste.values()) {
                construct(order, taste, true);
                construct(order, taste, false);
            }
        }
        boolean small = shapes.count <= SmallSheets.MOST_PIECES;
        while (bestSheets > bound && !effort.spent()) {
            if (!oneLess(small ? effort.left() / 4 : effort.left())) {
                if (small) {
                    proveOrLessen();
                }
                return;
            }
        }
    }

    private void proveOrLessen() {
        while (bestSheets > bound && !effort.spent()) {
            SmallSheets exact = new SmallSheets(shapes, width, height, bestSheets - 1, effort);
            Layout found = exact.search();
            if (found == null) {
                bound = exact.refuted() ? bestSheets : bound;
                return;
            }
            best = found;
            bestSheets--;
        }
    }

    private void construct(int[] order, SkylineBestFit.Taste taste, boolean up) {
        Layout layout = new Layout(shapes.count);
        int[] open = order.clone();
        int size = open.length;
        int sheet = 0;
        while (size > 0 && sheet < bestSheets) {
            fill.fill(up, width, height, open, size, taste, layout, sheet++);
            size = fill.restSize;
            System.arraycopy(fill.rest, 0, open, 0, size);
        }
        if (size == 0 && sheet < bestSheets) {
            best = layout.copy();
            bestSheets = sheet;
        }
    }

    private boolean oneLess(long looks) {
        int sheets = bestSheets - 1;
        Layout now = best.copy();
        long[] filled = new long[bestSheets];
        for (int i = 0; i < shapes.count; i++) {
            filled[now.sheet[i]] += shapes.area[i];
        }
        int dissolved = 0;
        for (int s = 1; s < bestSheets; s++) {
            if (filled[s] < filled[dissolved]) {
                dissolved = s;
            }
        }
        for (int i = 0; i < shapes.count; i++) {
            int s = now.sheet[i];
            now.sheet[i] = s == dissolved ? -1 : s == sheets ? dissolved : s;
        }
        return work(now, sheets, looks);
    }

    private boolean work(Layout now, int sheets, long looks) {
        Layout trial = now.copy();
        int[] pool = new int[shapes.count];
        int[] open = new int[shapes.count];
        boolean[] picked = new boolean[sheets];
        long over = leftOver(now);
        long room = (long) width * height;
        long start = effort.used;
        SkylineBestFit.Taste[] tastes = SkylineBestFit.Taste.values();
        while (over > 0 && effort.used < start + looks) {
            double age = (effort.used - start) / (double) looks;
            double warmth = 0.03 * (1 - age % 0.25 * 4);
            int take = Math.min(sheets, sheets <= 3 ? 1 + random.nextInt(sheets) : 1 + random.nextInt(3));
            Arrays.fill(picked, false);
            for (int k = 0; k < take; k++) {
                picked[random.nextInt(sheets)] = true;
            }
            int size = 0;
            for (int i = 0; i < shapes.count; i++) {
                if (now.sheet[i] < 0 || picked[now.sheet[i]]) {
                    pool[size++] = i;
                }
            }
            System.arraycopy(pool, 0, open, 0, size);
            order(open, size);
            long left = 0;
            int openSize = size;
            for (int s = 0; s < sheets; s++) {
                if (picked[s]) {
                    fill.fill(random.nextBoolean(), width, height, open, openSize, tastes[random.nextInt(3)], trial, s);
                    openSize = fill.restSize;
                    System.arraycopy(fill.rest, 0, open, 0, openSize);
                }
            }
            for (int k = 0; k < openSize; k++) {
                trial.sheet[open[k]] = -1;
                left += shapes.area[open[k]];
            }
            if (left <= over - Math.log(random.nextDouble() + 1e-12) * warmth * room * (left > over ? 1 : 0)) {
                over = left;
                for (int k = 0; k < size; k++) {
                    int i = pool[k];
                    now.put(i, trial.sheet[i], trial.x[i], trial.y[i], trial.turned[i]);
                }
            }
        }
        if (over > 0) {
            return false;
        }
        best = now;
        bestSheets = sheets;
        return true;
    }

    private void order(int[] open, int size) {
        if (random.nextInt(4) == 0) {
            ItemOrders.shuffle(open, size, random);
        } else {
            ItemOrders.roughlyByArea(open, size, shapes, keys, 0.2 + 0.8 * random.nextDouble(), random);
        }
    }

    private long leftOver(Layout layout) {
        long sum = 0;
        for (int i = 0; i < shapes.count; i++) {
            if (layout.sheet[i] < 0) {
                sum += shapes.area[i];
            }
        }
        return sum;
    }
}
