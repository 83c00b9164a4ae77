package puzzleworkshop.cutfiles.dxf;

/**
 * Slopes of the cubic spline through values at given steps, so that its second derivative has no jumps: a tridiagonal
 * system (de Boor, A Practical Guide to Splines, revised edition 2001, chapter IV, equation 7).
 */
final class CubicSlopes {

    private CubicSlopes() {}

    /** @param start and end: slopes given there at this index, or null for ends without bend */
    static double[] open(double[] value, double[] step, double[] start, double[] end, int index) {
        int n = value.length;
        double[] below = new double[n];
        double[] diagonal = new double[n];
        double[] above = new double[n];
        double[] right = new double[n];
        if (start != null) {
            diagonal[0] = 1;
            right[0] = start[index];
        } else {
            diagonal[0] = 2;
            above[0] = 1;
            right[0] = 3 * (value[1] - value[0]) / step[0];
        }
        inner(value, step, below, diagonal, above, right);
        if (end != null) {
            diagonal[n - 1] = 1;
            right[n - 1] = end[index];
        } else {
            below[n - 1] = 1;
            diagonal[n - 1] = 2;
            right[n - 1] = 3 * (value[n - 1] - value[n - 2]) / step[n - 2];
        }
        return solve(below, diagonal, above, right);
    }

    private static void inner(
            double[] value, double[] step, double[] below, double[] diagonal, double[] above, double[] right) {
        for (int i = 1; i < value.length - 1; i++) {
            below[i] = step[i];
            diagonal[i] = 2 * (step[i - 1] + step[i]);
            above[i] = step[i - 1];
            right[i] = 3
                    * (step[i] * (value[i] - value[i - 1]) / step[i - 1]
                            + step[i - 1] * (value[i + 1] - value[i]) / step[i]);
        }
    }

    /** The last value is the first again; the corners of the system are taken out by Sherman and Morrison's formula. */
    static double[] closed(double[] value, double[] step) {
        int n = value.length - 1;
        if (n < 2) {
            return new double[value.length];
        }
        double[] below = new double[n];
        double[] diagonal = new double[n];
        double[] above = new double[n];
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            double before = step[(i + n - 1) % n];
            double after = step[i];
            below[i] = after;
            diagonal[i] = 2 * (before + after);
            above[i] = before;
            double valueBefore = value[(i + n - 1) % n];
            right[i] = 3 * (after * (value[i] - valueBefore) / before + before * (value[i + 1] - value[i]) / after);
        }
        double corner = below[0];
        double otherCorner = above[n - 1];
        double gamma = -diagonal[0];
        diagonal[0] -= gamma;
        diagonal[n - 1] -= corner * otherCorner / gamma;
        double[] u = new double[n];
        u[0] = gamma;
        u[n - 1] = otherCorner;
        double[] one = solve(below, diagonal.clone(), above, right.clone());
        double[] two = solve(below, diagonal, above, u);
        double factor = (one[0] + corner / gamma * one[n - 1]) / (1 + two[0] + corner / gamma * two[n - 1]);
        double[] slopes = new double[n + 1];
        for (int i = 0; i < n; i++) {
            slopes[i] = one[i] - factor * two[i];
        }
        slopes[n] = slopes[0];
        return slopes;
    }

    /** Thomas's rule; diagonal and right are used up. */
    private static double[] solve(double[] below, double[] diagonal, double[] above, double[] right) {
        int n = right.length;
        for (int i = 1; i < n; i++) {
            double factor = below[i] / diagonal[i - 1];
            diagonal[i] -= factor * above[i - 1];
            right[i] -= factor * right[i - 1];
        }
        double[] solved = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            solved[i] = (right[i] - (i == n - 1 ? 0 : above[i] * solved[i + 1])) / diagonal[i];
        }
        return solved;
    }
}
