package puzzleworkshop.pattern.edges;

/**
 * Of a small motion of a curve, as shift along x, shift along y and turn, felt in some direction at each of its points: the
 * normal equations of weighted least squares. The symmetric 3 × 3 matrix is held as its upper rows, six numbers.
 */
final class NormalEquations {

    static final int NUMBERS = 6;

    private NormalEquations() {}

    /** Adds one point: what it feels of each of the three, and its weight. */
    static void add(double[] m, double x, double y, double turn, double weight) {
        m[0] += weight * x * x;
        m[1] += weight * x * y;
        m[2] += weight * x * turn;
        m[3] += weight * y * y;
        m[4] += weight * y * turn;
        m[5] += weight * turn * turn;
    }

    /** A straight edge cannot feel a shift along itself: eased. */
    static double[] inverse(double[] m) {
        double ease = 1e-9 * (m[0] + m[3] + m[5]) + 1e-12;
        double a = m[0] + ease;
        double b = m[1];
        double c = m[2];
        double d = m[3] + ease;
        double e = m[4];
        double f = m[5] + ease;
        double ca = d * f - e * e;
        double cb = c * e - b * f;
        double cc = b * e - c * d;
        double whole = a * ca + b * cb + c * cc;
        return new double[] {
            ca / whole,
            cb / whole,
            cc / whole,
            (a * f - c * c) / whole,
            (b * c - a * e) / whole,
            (a * d - b * b) / whole
        };
    }
}
