package puzzleworkshop.geometry.packing;

import java.util.Arrays;
import java.util.BitSet;

/**
 * Whether all pieces fill a sheet with no more waste than the sheet leaves over, by depth-first search: the lowest,
 * leftmost niche either takes a piece in its left corner or is given up and counted as waste. Niches that no sum of
 * sides can fill are counted as waste at once. Complete when there is no waste at all (each corner must then be
 * covered); with waste it may miss layouts, so only a 'yes' counts.
 *
 * <p>Method: Lesh, Marks, McMahon and Mitzenmacher, Exhaustive approaches to 2D rectangular perfect packings,
 * Information Processing Letters 90 (2004), with 90° turns added.
 */
final class PerfectFill {

    private final ItemShapes shapes;
    private final WorkBudget effort;
    private final int width;
    private final int height;
    private final int[] kindOf;
    private final int[] supply;
    private final int[] first;
    private final int kinds;
    private final int[] closestWidth;
    private final int[] closestHeight;
    private final int[] order;
    private final Layout layout;
    private int placed;

    PerfectFill(ItemShapes shapes, int width, int height, WorkBudget effort) {
        this.shapes = shapes;
        this.effort = effort;
        this.width = width;
        this.height = height;
        int n = shapes.count;
        kindOf = new int[n];
        first = new int[n];
        supply = new int[n];
        int found = 0;
        for (int i = 0; i < n; i++) {
            int k = 0;
            while (k < found && !shapes.alike(i, first[k])) {
                k++;
            }
            if (k == found) {
                first[found++] = i;
            }
            kindOf[i] = k;
            supply[k]++;
        }
        kinds = found;
        closestWidth = closestSums(width);
        closestHeight = width == height ? closestWidth : closestSums(height);
        order = byArea();
        layout = new Layout(n);
    }

    /** For each length the greatest sum of sides not above it; null when the sheet is too finely divided for a table. */
    private int[] closestSums(int limit) {
        if (limit > 2_000_000) {
            return null;
        }
        BitSet sums = new BitSet(limit + 1);
        sums.set(0);
        for (int i = 0; i < shapes.count; i++) {
            BitSet before = (BitSet) sums.clone();
            addShifted(before, sums, shapes.width[i], limit);
            if (shapes.turns(i)) {
                addShifted(before, sums, shapes.height[i], limit);
            }
        }
        int[] closest = new int[limit + 1];
        for (int v = 1; v <= limit; v++) {
            closest[v] = sums.get(v) ? v : closest[v - 1];
        }
        return closest;
    }

    private static void addShifted(BitSet from, BitSet to, int by, int limit) {
        for (int v = from.nextSetBit(0); v >= 0 && v + by <= limit; v = from.nextSetBit(v + 1)) {
            to.set(v + by);
        }
    }

    private int[] byArea() {
        Integer[] kindsByArea = new Integer[kinds];
        Arrays.setAll(kindsByArea, k -> k);
        Arrays.sort(kindsByArea, (a, b) -> Long.compare(shapes.area[first[b]], shapes.area[first[a]]));
        int[] result = new int[kinds];
        Arrays.setAll(result, k -> kindsByArea[k]);
        return result;
    }

    /** A layout of all pieces, or null when none was found within the effort. */
    Layout search() {
        long waste = (long) width * height - shapes.totalArea();
        if (waste < 0) {
            return null;
        }
        return step(new int[] {0, width}, new int[] {0}, 1, waste) ? layout : null;
    }

    private boolean step(int[] edgeLeft, int[] edgeLevel, int edges, long waste) {
        if (placed == shapes.count) {
            return true;
        }
        effort.spend(1);
        if (effort.spent()) {
            return false;
        }
        int niche = 0;
        for (int k = 1; k < edges; k++) {
            if (edgeLevel[k] < edgeLevel[niche]) {
                niche = k;
            }
        }
        int x = edgeLeft[niche];
        int y = edgeLevel[niche];
        int gap = edgeLeft[niche + 1] - x;
        int room = height - y;
        int wallLeft = niche == 0 ? room : edgeLevel[niche - 1] - y;
        int wallRight = niche == edges - 1 ? room : edgeLevel[niche + 1] - y;
        int lower = Math.min(wallLeft, wallRight);
        long sure = closestWidth == null ? 0 : (long) (gap - closestWidth[gap]) * Math.min(lower, shapes.smallestSide);
        if (sure > waste) {
            return false;
        }
        for (int pass = 0; pass < 2; pass++) {
            for (int k : order) {
                if (supply[k] == 0) {
                    continue;
                }
                int piece = first[k];
                int w = shapes.width[piece];
                int h = shapes.height[piece];
                boolean turns = shapes.turns(piece);
                for (int turn = 0; turn <= (turns ? 1 : 0); turn++) {
                    int pw = turn == 0 ? w : h;
                    int ph = turn == 0 ? h : w;
                    boolean closing = pw == gap;
                    if (pw > gap || ph > room || closing != (pass == 0)) {
                        continue;
                    }
                    if (effort.spent()) {
                        return false;
                    }
                    if (lay(k, turn == 1, edgeLeft, edgeLevel, edges, niche, pw, ph, waste)) {
                        return true;
                    }
                }
            }
        }
        long given = (long) gap * lower;
        if (given <= waste && lower < room) {
            return level(edgeLeft, edgeLevel, edges, niche, lower, waste - given);
        }
        return false;
    }

    private boolean lay(
            int kind, boolean turned, int[] edgeLeft, int[] edgeLevel, int edges, int niche, int w, int h, long waste) {
        int x = edgeLeft[niche];
        int y = edgeLevel[niche];
        int gap = edgeLeft[niche + 1] - x;
        long after = waste;
        if (closestHeight != null) {
            int above = height - y - h;
            after -= (long) (above - closestHeight[above]) * w;
        }
        if (after < 0) {
            return false;
        }
        if (w < gap && closestWidth != null && (long) (gap - w - closestWidth[gap - w]) > waste) {
            return false;
        }
        int[] nextLeft = new int[edges + 2];
        int[] nextLevel = new int[edges + 1];
        int n = 0;
        for (int k = 0; k < edges; k++) {
            if (k == niche) {
                n = push(nextLeft, nextLevel, n, x, y + h);
                if (w < gap) {
                    n = push(nextLeft, nextLevel, n, x + w, y);
                }
            } else {
                n = push(nextLeft, nextLevel, n, edgeLeft[k], edgeLevel[k]);
            }
        }
        nextLeft[n] = width;
        supply[kind]--;
        int piece = member(kind);
        layout.put(piece, 0, x, y, turned != orientationDiffers(piece, first[kind]));
        placed++;
        boolean done = step(nextLeft, nextLevel, n, waste);
        if (!done) {
            placed--;
            supply[kind]++;
            layout.sheet[piece] = -1;
        }
        return done;
    }

    private boolean level(int[] edgeLeft, int[] edgeLevel, int edges, int niche, int by, long waste) {
        int[] nextLeft = new int[edges + 1];
        int[] nextLevel = new int[edges];
        int n = 0;
        for (int k = 0; k < edges; k++) {
            n = push(nextLeft, nextLevel, n, edgeLeft[k], edgeLevel[k] + (k == niche ? by : 0));
        }
        nextLeft[n] = width;
        return step(nextLeft, nextLevel, n, waste);
    }

    private static int push(int[] toLeft, int[] toLevel, int n, int x, int y) {
        if (n > 0 && toLevel[n - 1] == y) {
            return n;
        }
        toLeft[n] = x;
        toLevel[n] = y;
        return n + 1;
    }

    private int member(int kind) {
        for (int i = 0; i < shapes.count; i++) {
            if (kindOf[i] == kind && layout.sheet[i] < 0) {
                return i;
            }
        }
        throw new IllegalStateException("No piece of this kind is left");
    }

    private boolean orientationDiffers(int piece, int model) {
        return shapes.width[piece] != shapes.width[model];
    }
}
