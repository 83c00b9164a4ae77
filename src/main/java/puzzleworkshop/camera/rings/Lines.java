package puzzleworkshop.camera.rings;

import java.util.Arrays;

/** Straight lines through points of a ring, and where two of them meet. */
public final class Lines {

    /** A bow's root mean square from the line that makes a curve, mm; by this share of its length more: paper is never quite flat. */
    private static final double BOW_MM = 0.028;

    private static final double BOW_SHARE = 0.0002;

    private static final double MOST_OF = 0.5;

    /** Points of a straight edge scatter by about this, mm. */
    private static final double SCATTER_MM = 0.1;

    private static final int ROUNDS = 4;

    private Lines() {}

    /** A point of the line and its direction, with the least sum of squared distances, over count points from an index on. */
    public static double[] through(double[] ring, int from, int count) {
        double[] even = new double[count];
        Arrays.fill(even, 1);
        return through(ring, from, even);
    }

    /** The same line along most of the points: the farther one lies from it, the less it counts (Cauchy's weights). */
    static double[] alongMost(double[] ring, int from, int count) {
        int n = Ring.size(ring);
        double[] weights = new double[count];
        Arrays.fill(weights, 1);
        double[] line = through(ring, from, weights);
        for (int round = 0; round < ROUNDS; round++) {
            for (int k = 0; k < count; k++) {
                int i = Math.floorMod(from + k, n);
                double off = (ring[2 * i] - line[0]) * line[3] - (ring[2 * i + 1] - line[1]) * line[2];
                weights[k] = 1 / (1 + off * off / (SCATTER_MM * SCATTER_MM));
            }
            line = through(ring, from, weights);
        }
        return line;
    }

    private static double[] through(double[] ring, int from, double[] weights) {
        int n = Ring.size(ring);
        double all = 0;
        double mx = 0;
        double my = 0;
        for (int k = 0; k < weights.length; k++) {
            int i = Math.floorMod(from + k, n);
            mx += weights[k] * ring[2 * i];
            my += weights[k] * ring[2 * i + 1];
            all += weights[k];
        }
        mx /= all;
        my /= all;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int k = 0; k < weights.length; k++) {
            int i = Math.floorMod(from + k, n);
            double dx = ring[2 * i] - mx;
            double dy = ring[2 * i + 1] - my;
            xx += weights[k] * dx * dx;
            xy += weights[k] * dx * dy;
            yy += weights[k] * dy * dy;
        }
        double angle = 0.5 * Math.atan2(2 * xy, xx - yy);
        return new double[] {mx, my, Math.cos(angle), Math.sin(angle)};
    }

    /** Farthest of count points from a line. */
    public static double worst(double[] ring, int from, int count, double x, double y, double dx, double dy) {
        int n = Ring.size(ring);
        double worst = 0;
        for (int k = 0; k < count; k++) {
            int i = Math.floorMod(from + k, n);
            worst = Math.max(worst, Math.abs((ring[2 * i] - x) * dy - (ring[2 * i + 1] - y) * dx));
        }
        return worst;
    }

    /** Null where they run nearly the same way. */
    public static double[] meet(
            double ax, double ay, double adx, double ady, double bx, double by, double bdx, double bdy) {
        double cross = adx * bdy - ady * bdx;
        if (Math.abs(cross) < 0.03) {
            return null;
        }
        double t = ((bx - ax) * bdy - (by - ay) * bdx) / cross;
        return new double[] {ax + t * adx, ay + t * ady};
    }

    /** The point of a line nearest to a point. */
    static double[] foot(double[] point, double x, double y, double dx, double dy) {
        double t = (point[0] - x) * dx + (point[1] - y) * dy;
        return new double[] {x + t * dx, y + t * dy};
    }

    static double apart(double[] a, double[] b) {
        return Math.hypot(a[0] - b[0], a[1] - b[1]);
    }

    /** Distance of a point from the edge of a ring. */
    public static double fromRing(double[] ring, double x, double y) {
        int n = Ring.size(ring);
        double least = Double.MAX_VALUE;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            double dx = ring[2 * j] - ring[2 * i];
            double dy = ring[2 * j + 1] - ring[2 * i + 1];
            double px = x - ring[2 * i];
            double py = y - ring[2 * i + 1];
            double t = Math.clamp((px * dx + py * dy) / Math.max(1e-12, dx * dx + dy * dy), 0, 1);
            least = Math.min(least, (px - t * dx) * (px - t * dx) + (py - t * dy) * (py - t * dy));
        }
        return Math.sqrt(least);
    }

    /**
     * Whether a stretch is a curve, however near it keeps to the line: one bow, or one to each side, is most of what it strays (the
     * second and third of Legendre's polynomials along it). What wavers to and fro more often is scatter.
     */
    static boolean isBowed(double[] ring, StraightEdges.Side side) {
        int n = Ring.size(ring);
        int count = Math.floorMod(side.to() - side.from(), n);
        int skip = Math.min(2, count / 6);
        int points = count - 2 * skip;
        if (points < 10) {
            return false;
        }
        double all = 0;
        double second = 0;
        double third = 0;
        for (int k = 0; k < points; k++) {
            int i = (side.from() + skip + k) % n;
            double beside = (ring[2 * i] - side.x()) * side.dy() - (ring[2 * i + 1] - side.y()) * side.dx();
            double t = (2 * k + 1.0) / points - 1;
            all += beside * beside / points;
            second += beside * (3 * t * t - 1) / 2 / points;
            third += beside * (5 * t * t * t - 3 * t) / 2 / points;
        }
        double bowed = 5 * second * second + 7 * third * third;
        return bowed > MOST_OF * all && Math.sqrt(bowed) > BOW_MM + BOW_SHARE * side.length();
    }
}
