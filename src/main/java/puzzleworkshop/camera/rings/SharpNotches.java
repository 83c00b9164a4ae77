package puzzleworkshop.camera.rings;

/**
 * Narrow notches followed to their ends. Where two sides come together at a sharp angle into the board, blur fills the end, and a
 * wall that faces the camera hides it; so the sides are followed on to where they meet. Rather too deep than not deep enough: what is
 * cut away there holds no blank.
 */
public final class SharpNotches {

    /** Points beside the end that are rounded, and after these those whose line is followed. */
    private static final int ROUNDED = 3;

    private static final int FOLLOWED = 5;

    /** Cosine of the notch's angle, 75°; wider ones are found as they are. */
    private static final double WIDEST = 0.26;

    /** How far the sides may be from straight, mm. */
    private static final double STRAIGHT_MM = 0.15;

    /** How far they are followed, mm. */
    private static final double LEAST_MM = 0.3;

    private static final double MOST_MM = 4;

    /** What remains between the end and another edge, mm. */
    private static final double LEFT_MM = 1.5;

    private static final int NEIGHBOURS = 15;

    private SharpNotches() {}

    /** @param ring with the board to its right, points {@link Ring#SPACING} apart; the same way round afterwards */
    public static double[] followed(double[] ring) {
        int n = Ring.size(ring);
        if (n < 2 * NEIGHBOURS + 4) {
            return ring;
        }
        double[][] ends = new double[n][];
        double[] far = new double[n];
        for (int i = 0; i < n; i++) {
            ends[i] = end(ring, i);
            far[i] = ends[i] == null ? Double.MAX_VALUE : Math.hypot(ends[i][0] - x(ring, i), ends[i][1] - y(ring, i));
        }
        double[] out = new double[ring.length];
        int count = 0;
        for (int i = 0; i < n; i++) {
            int near = 0;
            for (int d = -ROUNDED + 1; d < ROUNDED; d++) {
                near = isDeepest(far, Math.floorMod(i + d, n)) ? d + 2 * ROUNDED : near;
            }
            if (near == 0 || near == 2 * ROUNDED) {
                out[2 * count] = near == 0 ? x(ring, i) : ends[i][0];
                out[2 * count++ + 1] = near == 0 ? y(ring, i) : ends[i][1];
            }
        }
        return count == n ? ring : Ring.spaced(java.util.Arrays.copyOf(out, 2 * count), Ring.SPACING);
    }

    /** Of the points around the end of a notch the one nearest to where its sides meet. */
    private static boolean isDeepest(double[] far, int i) {
        for (int d = -2 * ROUNDED; d <= 2 * ROUNDED && far[i] < Double.MAX_VALUE; d++) {
            int j = Math.floorMod(i + d, far.length);
            if (far[j] < far[i] || far[j] == far[i] && j < i) {
                return false;
            }
        }
        return far[i] < Double.MAX_VALUE;
    }

    /** Where the sides before and after a point meet farther in than it, or null. */
    private static double[] end(double[] ring, int i) {
        double[] in = side(ring, i - ROUNDED - FOLLOWED + 1);
        double[] out = side(ring, i + ROUNDED);
        if (in == null || out == null) {
            return null;
        }
        boolean isNotch = in[2] * out[3] - in[3] * out[2] < 0 && in[2] * out[2] + in[3] * out[3] < -WIDEST;
        double[] meet = isNotch ? Lines.meet(in[0], in[1], in[2], in[3], out[0], out[1], out[2], out[3]) : null;
        if (meet == null) {
            return null;
        }
        double ahead = (meet[0] - x(ring, i - ROUNDED)) * in[2] + (meet[1] - y(ring, i - ROUNDED)) * in[3];
        double behind = (x(ring, i + ROUNDED) - meet[0]) * out[2] + (y(ring, i + ROUNDED) - meet[1]) * out[3];
        double far = Math.hypot(meet[0] - x(ring, i), meet[1] - y(ring, i));
        return ahead > 0 && behind > 0 && far > LEAST_MM && far < MOST_MM && isFree(ring, i, meet) ? meet : null;
    }

    private static boolean isFree(double[] ring, int i, double[] meet) {
        int n = Ring.size(ring);
        for (int d = NEIGHBOURS; d <= n - NEIGHBOURS; d++) {
            if (Math.hypot(x(ring, i + d) - meet[0], y(ring, i + d) - meet[1]) < LEFT_MM) {
                return false;
            }
        }
        return true;
    }

    /** The line through some points, the way the ring runs; null where they are no line. */
    private static double[] side(double[] ring, int from) {
        double[] line = Lines.through(ring, from, FOLLOWED);
        double dx = x(ring, from + FOLLOWED - 1) - x(ring, from);
        double dy = y(ring, from + FOLLOWED - 1) - y(ring, from);
        if (Lines.worst(ring, from, FOLLOWED, line[0], line[1], line[2], line[3]) > STRAIGHT_MM) {
            return null;
        }
        double sign = dx * line[2] + dy * line[3] < 0 ? -1 : 1;
        return new double[] {line[0], line[1], sign * line[2], sign * line[3]};
    }

    private static double x(double[] ring, int i) {
        return ring[2 * Math.floorMod(i, Ring.size(ring))];
    }

    private static double y(double[] ring, int i) {
        return ring[2 * Math.floorMod(i, Ring.size(ring)) + 1];
    }
}
