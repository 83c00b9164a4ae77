package puzzleworkshop.pattern.edges;

/**
 * Of a small motion of a curve, as shift along x, shift along y and turn, felt in some direction at each of its points: the
 * normal equations of weighted least squares. The symmetric 3 × 3 matrix is held as its upper rows, six numbers.
 */
final class NormalEquations {

    private NormalEquations() {}

    /**
     * Of the sums, over all points, of weight × what is felt of the one × what is felt of the other. They are summed where the
     * points are, in variables of their own: in an array each sum would wait for the memory. A straight edge cannot feel a
     * shift along itself: eased.
     */
    static double[] inverse(double xx, double xy, double xt, double yy, double yt, double tt) {
        double ease = 1e-9 * (xx + yy + tt) + 1e-12;
        double a = xx + ease;
        double b = xy;
        double c = xt;
        double d = yy + ease;
        double e = yt;
        double f = tt + ease;
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
