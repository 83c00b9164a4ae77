package puzzleworkshop.camera.pieces;

/** A closed edge as points at even distances around its middle, ready to be laid on another in every turn. */
final class PieceProfile {

    static final int POINTS = 96;

    private static final int WAVES = 12;

    final double[] x = new double[POINTS];
    final double[] y = new double[POINTS];
    final double[] ring;
    final double area;
    /** Where the middle of its points lay before it was taken for the origin. */
    final double middleX;

    final double middleY;
    private final double square;
    /** Sizes of the first waves of the edge as a complex function: the same in every turn, from every starting point. */
    private final double[] waves = new double[2 * WAVES];

    PieceProfile(double[] edge, boolean mirrored) {
        double[] turned = edge.clone();
        if (mirrored) {
            int n = edge.length / 2;
            for (int i = 0; i < n; i++) {
                // mirrored and walked the other way, so that it still runs clockwise
                turned[2 * i] = -edge[2 * (n - 1 - i)];
                turned[2 * i + 1] = edge[2 * (n - 1 - i) + 1];
            }
        }
        ring = turned;
        space();
        double mx = 0;
        double my = 0;
        for (int i = 0; i < POINTS; i++) {
            mx += x[i] / POINTS;
            my += y[i] / POINTS;
        }
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            x[i] -= mx;
            y[i] -= my;
            sum += x[i] * x[i] + y[i] * y[i];
        }
        for (int i = 0; i < ring.length; i += 2) {
            ring[i] -= mx;
            ring[i + 1] -= my;
        }
        middleX = mx;
        middleY = my;
        square = sum;
        double doubled = 0;
        for (int i = 0; i < ring.length; i += 2) {
            int j = (i + 2) % ring.length;
            doubled += ring[i] * ring[j + 1] - ring[j] * ring[i + 1];
        }
        area = doubled / 2;
        waves();
    }

    private void waves() {
        for (int w = 0; w < waves.length; w++) {
            int k = w < WAVES ? w + 1 : WAVES - 1 - w;
            double re = 0;
            double im = 0;
            for (int i = 0; i < POINTS; i++) {
                double angle = -2 * Math.PI * k * i / POINTS;
                double c = Math.cos(angle);
                double s = Math.sin(angle);
                re += x[i] * c - y[i] * s;
                im += x[i] * s + y[i] * c;
            }
            waves[w] = Math.hypot(re, im) / POINTS;
        }
    }

    /**
     * A lower bound of the mean squared distance that {@link #onto} finds, at little cost: by Parseval's theorem no turn and no
     * starting point brings two edges nearer than the sizes of their waves are.
     */
    double atLeast(PieceProfile other) {
        double sum = 0;
        for (int w = 0; w < waves.length; w++) {
            double d = waves[w] - other.waves[w];
            sum += d * d;
        }
        return sum;
    }

    private void space() {
        int n = ring.length / 2;
        double[] at = new double[n + 1];
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            at[i + 1] = at[i] + Math.hypot(ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]);
        }
        int side = 0;
        for (int k = 0; k < POINTS; k++) {
            double wanted = at[n] * k / POINTS;
            while (side < n - 1 && at[side + 1] < wanted) {
                side++;
            }
            double length = at[side + 1] - at[side];
            double share = length > 0 ? (wanted - at[side]) / length : 0;
            int j = (side + 1) % n;
            x[k] = ring[2 * side] + share * (ring[2 * j] - ring[2 * side]);
            y[k] = ring[2 * side + 1] + share * (ring[2 * j + 1] - ring[2 * side + 1]);
        }
    }

    /**
     * The best turn that lays this profile on another, over all starting points, in closed form: mean squared distance, cosine,
     * sine.
     */
    double[] onto(PieceProfile other) {
        double best = -1;
        double cos = 1;
        double sin = 0;
        for (int shift = 0; shift < POINTS; shift++) {
            double dot = 0;
            double cross = 0;
            for (int i = 0; i < POINTS; i++) {
                int j = i + shift < POINTS ? i + shift : i + shift - POINTS;
                dot += x[i] * other.x[j] + y[i] * other.y[j];
                cross += x[i] * other.y[j] - y[i] * other.x[j];
            }
            double size = dot * dot + cross * cross;
            if (size > best) {
                best = size;
                cos = dot;
                sin = cross;
            }
        }
        double length = Math.sqrt(best);
        return new double[] {Math.max(0, (square + other.square - 2 * length) / POINTS), cos / length, sin / length};
    }
}
