package puzzleworkshop.camera.outline;

/** Straight lines through points of a ring, and where two of them meet. */
final class Lines {

    private Lines() {}

    /** A point of the line and its direction, with the least sum of squared distances, over count points from an index on. */
    static double[] through(double[] ring, int from, int count) {
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
    static double worst(double[] ring, int from, int count, double x, double y, double dx, double dy) {
        int n = Ring.size(ring);
        double worst = 0;
        for (int k = 0; k < count; k++) {
            int i = Math.floorMod(from + k, n);
            worst = Math.max(worst, Math.abs((ring[2 * i] - x) * dy - (ring[2 * i + 1] - y) * dx));
        }
        return worst;
    }

    /** Null where they run nearly the same way. */
    static double[] meet(double ax, double ay, double adx, double ady, double bx, double by, double bdx, double bdy) {
        double cross = adx * bdy - ady * bdx;
        if (Math.abs(cross) < 0.03) {
            return null;
        }
        double t = ((bx - ax) * bdy - (by - ay) * bdx) / cross;
        return new double[] {ax + t * adx, ay + t * ady};
    }

    /** Distance of a point from the edge of a ring. */
    static double fromRing(double[] ring, double x, double y) {
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
}
