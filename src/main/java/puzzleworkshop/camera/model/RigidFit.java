package puzzleworkshop.camera.model;

/**
 * The best turn and shift (and scale, where asked) that lay one set of points on another, in least squares, without a mirror. In
 * closed form for the plane; the same result as S. Umeyama, Least-squares estimation of transformation parameters between two
 * point patterns, IEEE Transactions on Pattern Analysis and Machine Intelligence 13(4), 1991, equations 40 to 42.
 *
 * @param cos of the turn
 * @param sin of the turn; (x, y) goes to scale·(cos·x − sin·y, sin·x + cos·y) + (shiftX, shiftY)
 */
public record RigidFit(double scale, double cos, double sin, double shiftX, double shiftY, double meanSquaredError) {

    public static RigidFit rigid(double[] from, double[] to) {
        return between(from, to, false);
    }

    public static RigidFit similar(double[] from, double[] to) {
        return between(from, to, true);
    }

    private static RigidFit between(double[] from, double[] to, boolean scaled) {
        int n = from.length / 2;
        if (n < 1 || from.length != to.length) {
            throw new IllegalArgumentException("A fit needs pairs of points");
        }
        double ax = 0;
        double ay = 0;
        double bx = 0;
        double by = 0;
        for (int i = 0; i < n; i++) {
            ax += from[2 * i] / n;
            ay += from[2 * i + 1] / n;
            bx += to[2 * i] / n;
            by += to[2 * i + 1] / n;
        }
        double dot = 0;
        double cross = 0;
        double spread = 0;
        double target = 0;
        for (int i = 0; i < n; i++) {
            double px = from[2 * i] - ax;
            double py = from[2 * i + 1] - ay;
            double qx = to[2 * i] - bx;
            double qy = to[2 * i + 1] - by;
            dot += px * qx + py * qy;
            cross += px * qy - py * qx;
            spread += px * px + py * py;
            target += qx * qx + qy * qy;
        }
        double length = Math.hypot(dot, cross);
        double cos = length > 0 ? dot / length : 1;
        double sin = length > 0 ? cross / length : 0;
        double scale = scaled && spread > 0 ? length / spread : 1;
        double error = Math.max(0, (target - 2 * scale * length + scale * scale * spread) / n);
        return new RigidFit(
                scale, cos, sin, bx - scale * (cos * ax - sin * ay), by - scale * (sin * ax + cos * ay), error);
    }

    public double x(double x, double y) {
        return scale * (cos * x - sin * y) + shiftX;
    }

    public double y(double x, double y) {
        return scale * (sin * x + cos * y) + shiftY;
    }
}
