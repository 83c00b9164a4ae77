package puzzleworkshop.camera.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import puzzleworkshop.camera.rings.Ring;

/** Stretches of an edge that brightness does not tell: found, bridged by the straight way, and given back where that is wrong. */
final class EdgeGaps {

    /** Points of a stretch that may be bridged: 24 mm. */
    private static final int LONGEST_GAP = 40;

    private static final int BESIDE_POINTS = 10;

    /** Points along which a bump is looked for, and what is one. */
    private static final int[] BUMPS = {22, 36, 52};

    private static final int BESIDE = 2;
    private static final double BUMP_MM = 0.4;
    private static final double STRAIGHT = 0.999;

    private EdgeGaps() {}

    /** A bump in what is straight before and after it may be colour's mistake as well: a block of the JPEG that a dark wall has tinted. */
    static void doubt(boolean[] told, double[] ring) {
        int n = told.length;
        double[] normals = Ring.normals(ring, 6);
        boolean[] bump = new boolean[n];
        for (int along : BUMPS) {
            for (int i = 0; i < n && 2 * along < n; i++) {
                mark(bump, ring, normals, i, along);
            }
        }
        for (int i = 0; i < n; i++) {
            for (int d = -BESIDE; d <= BESIDE && bump[i]; d++) {
                told[Math.floorMod(i + d, n)] = false;
            }
        }
    }

    private static void mark(boolean[] bump, double[] ring, double[] normals, int i, int along) {
        int n = bump.length;
        int to = (i + along) % n;
        double dx = ring[2 * to] - ring[2 * i];
        double dy = ring[2 * to + 1] - ring[2 * i + 1];
        double d = Math.max(1e-9, Math.hypot(dx, dy));
        if (dy * normals[2 * i] - dx * normals[2 * i + 1] < STRAIGHT * d
                || dy * normals[2 * to] - dx * normals[2 * to + 1] < STRAIGHT * d) {
            return;
        }
        boolean[] off = new boolean[along];
        int count = 0;
        double farthest = 0;
        for (int k = 1; k < along; k++) {
            int j = (i + k) % n;
            double far = Math.abs((ring[2 * j] - ring[2 * i]) * dy - (ring[2 * j + 1] - ring[2 * i + 1]) * dx) / d;
            farthest = Math.max(farthest, far);
            off[k] = far > BUMP_MM / 2;
            count += off[k] ? 1 : 0;
        }
        for (int k = 1; k < along && farthest > BUMP_MM && count <= 0.6 * along; k++) {
            bump[(i + k) % n] |= off[k];
        }
    }

    /** A stretch that brightness does not tell may be colour's mistake: the straight way between its ends is tried instead. */
    static double[] bridged(double[] ring, boolean[] told) {
        double[] bridged = ring.clone();
        for (int[] gap : gaps(told)) {
            int n = told.length;
            int from = Math.floorMod(gap[0] - 1, n);
            int to = (gap[0] + gap[1]) % n;
            if (gap[1] > LONGEST_GAP) {
                continue;
            }
            for (int k = 0; k < gap[1]; k++) {
                int i = (gap[0] + k) % n;
                double share = (k + 1.0) / (gap[1] + 1);
                for (int c = 0; c < 2; c++) {
                    bridged[2 * i + c] = ring[2 * from + c] + share * (ring[2 * to + c] - ring[2 * from + c]);
                }
            }
        }
        return bridged;
    }

    /**
     * Where brightness does not tell the straight way clearly, colour has the word after all. Clearly: as strongly as before and
     * after it, and more strongly than where colour saw the edge.
     *
     * @param first steps of brightness where colour saw the edge
     * @param again on the straight way
     */
    static void restore(
            double[] moved, double[] byColour, boolean[] told, boolean[] before, double[] first, double[] again) {
        int n = told.length;
        for (int[] gap : gaps(told)) {
            double here = middle(again, gap[0], gap[1]);
            double beside = (middle(first, gap[0] - BESIDE_POINTS, BESIDE_POINTS)
                            + middle(first, gap[0] + gap[1], BESIDE_POINTS))
                    / 2;
            boolean straight = gap[1] <= LONGEST_GAP
                    && here * beside > 0
                    && Math.abs(here) > 0.5 * Math.abs(beside)
                    && Math.abs(here) > Math.abs(middle(first, gap[0], gap[1]));
            for (int k = 0; k < gap[1]; k++) {
                int i = (gap[0] + k) % n;
                if (straight) {
                    told[i] = true;
                } else {
                    told[i] = before[i];
                    moved[2 * i] = byColour[2 * i];
                    moved[2 * i + 1] = byColour[2 * i + 1];
                }
            }
        }
    }

    /** Median of some points on. */
    private static double middle(double[] sizes, int from, int count) {
        double[] some = new double[count];
        for (int k = 0; k < count; k++) {
            some[k] = sizes[Math.floorMod(from + k, sizes.length)];
        }
        Arrays.sort(some);
        return some[count / 2];
    }

    /** First point and length of each stretch that is not told. */
    private static List<int[]> gaps(boolean[] told) {
        int n = told.length;
        List<int[]> gaps = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            if (!told[i] && told[Math.floorMod(i - 1, n)]) {
                int length = 1;
                while (!told[(i + length) % n]) {
                    length++;
                }
                gaps.add(new int[] {i, length});
            }
        }
        return gaps;
    }

    /** What is missing goes on from both sides. */
    static double[] filled(double[] off) {
        int n = off.length;
        int first = 0;
        while (first < n && Double.isNaN(off[first])) {
            first++;
        }
        double[] filled = off.clone();
        if (first == n) {
            Arrays.fill(filled, 0);
            return filled;
        }
        int last = first;
        for (int k = 1; k <= n; k++) {
            int i = (first + k) % n;
            if (Double.isNaN(off[i])) {
                continue;
            }
            int gap = Math.floorMod(i - last - 1, n);
            for (int g = 1; g <= gap; g++) {
                double share = g / (gap + 1.0);
                double between = off[last] + share * (off[i] - off[last]);
                // in a long gap colour has the word
                filled[(last + g) % n] = gap > 8 ? 0 : between;
            }
            last = i;
        }
        return filled;
    }
}
