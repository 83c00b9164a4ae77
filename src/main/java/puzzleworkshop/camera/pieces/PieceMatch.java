package puzzleworkshop.camera.pieces;

import puzzleworkshop.camera.model.RigidFit;

/** How well a found edge lies on the edge of a pattern's piece: iterated closest points from the best turn of {@link PieceProfile}. */
final class PieceMatch {

    private static final int ROUNDS = 8;

    private PieceMatch() {}

    /** Root mean square distance of the found edge from the piece's, mm, after the best turn and shift. */
    static double distance(PieceProfile found, PieceProfile piece, double cos, double sin) {
        double[] points = new double[2 * PieceProfile.POINTS];
        for (int i = 0; i < PieceProfile.POINTS; i++) {
            points[2 * i] = cos * found.x[i] - sin * found.y[i];
            points[2 * i + 1] = sin * found.x[i] + cos * found.y[i];
        }
        double[] near = new double[points.length];
        double error = 0;
        for (int round = 0; round <= ROUNDS; round++) {
            error = nearest(piece.ring, points, near);
            if (round < ROUNDS) {
                RigidFit fit = RigidFit.rigid(points, near);
                for (int i = 0; i < points.length; i += 2) {
                    double x = points[i];
                    points[i] = fit.x(x, points[i + 1]);
                    points[i + 1] = fit.y(x, points[i + 1]);
                }
            }
        }
        return Math.sqrt(error);
    }

    /**
     * Nearest places of a ring to points that run along it the same way: after the first point only what lies around the last
     * one's place is looked at.
     */
    private static double nearest(double[] ring, double[] points, double[] near) {
        double sum = 0;
        int n = ring.length / 2;
        int window = Math.max(8, n / 8);
        int at = -1;
        for (int p = 0; p < points.length; p += 2) {
            double least = Double.MAX_VALUE;
            int from = at < 0 ? 0 : at - window / 2;
            int to = at < 0 ? n : at + window;
            for (int k = from; k < to; k++) {
                int i = 2 * Math.floorMod(k, n);
                int j = i + 2 < ring.length ? i + 2 : 0;
                double dx = ring[j] - ring[i];
                double dy = ring[j + 1] - ring[i + 1];
                double ex = points[p] - ring[i];
                double ey = points[p + 1] - ring[i + 1];
                double t = Math.clamp((ex * dx + ey * dy) / Math.max(1e-12, dx * dx + dy * dy), 0, 1);
                double d = (ex - t * dx) * (ex - t * dx) + (ey - t * dy) * (ey - t * dy);
                if (d < least) {
                    least = d;
                    near[p] = ring[i] + t * dx;
                    near[p + 1] = ring[i + 1] + t * dy;
                    at = i / 2;
                }
            }
            sum += least;
        }
        return sum / (points.length / 2.0);
    }
}
