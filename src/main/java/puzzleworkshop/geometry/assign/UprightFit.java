package puzzleworkshop.geometry.assign;

import java.util.Comparator;
import java.util.List;
import puzzleworkshop.measure.Size;

/**
 * Whether a few rectangles, each along the edges of a board either way round, lie in a rectangular board together: exact.
 *
 * <p>Of any two one lies left of, right of, below or above the other. All those relations are gone through, one pair after
 * the other; each keeps its rectangles as far left and low as the relations so far allow (longest paths), and a branch ends
 * when one reaches out of the board (relations between boxes as in Fekete and Schepers, A combinatorial characterization of
 * higher-dimensional orthogonal packing, Mathematics of Operations Research 29, 2004).
 */
final class UprightFit {

    /** After so many branches the answer is 'it may'. */
    private static final int MOST_BRANCHES = 60_000;

    private static final double TOLERANCE_MM = 0.05;

    private final double width;
    private final double height;
    private final double[] longer;
    private final double[] shorter;
    private final int count;
    private final double[] w;
    private final double[] h;
    /** before[0][i][j]: i ends before j begins from left to right; [1]: from below upwards. */
    private final boolean[][][] before;

    private final double[] at;
    private int branches;

    private UprightFit(Size board, List<Size> rectangles) {
        width = board.width().mm() + TOLERANCE_MM;
        height = board.height().mm() + TOLERANCE_MM;
        List<Size> ordered = rectangles.stream()
                .sorted(Comparator.comparing(Size::area).reversed())
                .toList();
        count = ordered.size();
        longer = ordered.stream().mapToDouble(size -> size.longerSide().mm()).toArray();
        shorter = ordered.stream().mapToDouble(size -> size.shorterSide().mm()).toArray();
        w = new double[count];
        h = new double[count];
        before = new boolean[2][count][count];
        at = new double[count];
    }

    /** False: they certainly do not. */
    static boolean mayHold(Size board, List<Size> rectangles) {
        return new UprightFit(board, rectangles).place(0);
    }

    private boolean place(int next) {
        if (next == count || branches > MOST_BRANCHES) {
            return true;
        }
        return turned(next, longer[next], shorter[next])
                || longer[next] != shorter[next] && turned(next, shorter[next], longer[next]);
    }

    private boolean turned(int next, double itsWidth, double itsHeight) {
        if (itsWidth > width || itsHeight > height) {
            return false;
        }
        w[next] = itsWidth;
        h[next] = itsHeight;
        return relate(next, 0);
    }

    private boolean relate(int next, int other) {
        if (other == next) {
            return place(next + 1);
        }
        return w[next] + w[other] <= width
                        && (related(0, other, next, next, other)
                                || !isFirstPair(next) && related(0, next, other, next, other))
                || h[next] + h[other] <= height
                        && (related(1, other, next, next, other)
                                || !isFirstPair(next) && related(1, next, other, next, other));
    }

    /** Mirrored packings are the same: the second rectangle need not be tried left of or below the first. */
    private static boolean isFirstPair(int next) {
        return next == 1;
    }

    private boolean related(int way, int first, int second, int next, int other) {
        if (++branches > MOST_BRANCHES) {
            return true;
        }
        before[way][first][second] = true;
        boolean holds = isWithin(way, next) && relate(next, other + 1);
        before[way][first][second] = false;
        return holds;
    }

    private boolean isWithin(int way, int last) {
        double[] side = way == 0 ? w : h;
        double room = way == 0 ? width : height;
        java.util.Arrays.fill(at, 0, last + 1, 0);
        boolean moved = true;
        for (int round = 0; moved && round <= last + 1; round++) {
            moved = false;
            for (int i = 0; i <= last; i++) {
                for (int j = 0; j <= last; j++) {
                    if (before[way][i][j] && at[i] + side[i] > at[j] + 1e-9) {
                        at[j] = at[i] + side[i];
                        moved = true;
                        if (at[j] + side[j] > room) {
                            return false;
                        }
                    }
                }
            }
        }
        return true;
    }
}
