package puzzleworkshop.camera.rings;

import java.util.Arrays;

/** Straight lines through points of a ring, and where two of them meet. */
public final class Lines {

    /**
     * A stretch of which a fifth lies so far beside the line is a curve, mm; by this share of its length more, because paper is never
     * quite flat, and by so many deviations of that fifth's mean.
     */
    private static final double BOW_MM = 0.03;

    private static final double BOW_SHARE = 0.0002;
    private static final double SCATTER = 2;

    private Lines() {}

    /** A point of the line and its direction, with the least sum of squared distances, over count points from an index on. */
    public static double[] through(double[] ring, int from, int count) {
        int n = Ring.size(ring);
        double mx = 0;
        double my = 0;
        for (int k = 0; k < count; k++) {
            int i = Math.floorMod(from + k, n);
            mx += ring[2 * i] / count;
            my += ring[2 * i + 1] / count;
        }
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int k = 0; k < count; k++) {
            int i = Math.floorMod(from + k, n);
            double dx = ring[2 * i] - mx;
            double dy = ring[2 * i + 1] - my;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
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

    /** Whether some fifth of a stretch lies to one side as a whole: then it is a curve, however near it keeps to the line. */
    static boolean isBowed(double[] ring, StraightEdges.Side side) {
        int n = Ring.size(ring);
        int count = Math.floorMod(side.to() - side.from(), n);
        int skip = Math.min(2, count / 6);
        int fifth = (count - 2 * skip) / 5;
        if (fifth < 2) {
            return false;
        }
        double[] means = new double[5];
        double steps = 0;
        double before = 0;
        for (int k = 0; k < 5 * fifth; k++) {
            int i = (side.from() + skip + k) % n;
            double beside = (ring[2 * i] - side.x()) * side.dy() - (ring[2 * i + 1] - side.y()) * side.dx();
            steps += k == 0 ? 0 : (beside - before) * (beside - before);
            before = beside;
            means[k / fifth] += beside / fifth;
        }
        double middle = Arrays.stream(means).average().orElse(0);
        double most = Arrays.stream(means).map(m -> Math.abs(m - middle)).max().orElse(0);
        // from one point to the next a curve hardly moves: what does is scatter
        double scatter = Math.sqrt(steps / (2 * (5 * fifth - 1)) / fifth);
        return most > BOW_MM + BOW_SHARE * side.length() + SCATTER * scatter;
    }
}
