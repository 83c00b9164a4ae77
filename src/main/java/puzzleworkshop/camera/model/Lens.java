package puzzleworkshop.camera.model;

/**
 * What a lens does to straight lines: radial and tangential distortion of the ideal place (x, y) on the plane at distance one.
 *
 * <p>x' = x·(1 + k₁r² + k₂r⁴) + 2p₁xy + p₂(r² + 2x²), y' = y·(1 + k₁r² + k₂r⁴) + p₁(r² + 2y²) + 2p₂xy with r² = x² + y².
 * Source: A. E. Conrady, Decentred lens systems (1919), and D. C. Brown, Decentering distortion of lenses (1966), in the order of
 * terms that OpenCV's documentation of camera calibration gives.
 */
public record Lens(double k1, double k2, double p1, double p2) {

    public static final Lens IDEAL = new Lens(0, 0, 0, 0);

    private static final int MOST_STEPS = 30;
    private static final double CLOSE = 1e-12;

    /** Where the lens puts the ideal place; the result goes into out[0] and out[1]. */
    public void distort(double x, double y, double[] out) {
        double r2 = x * x + y * y;
        double radial = 1 + r2 * (k1 + r2 * k2);
        out[0] = x * radial + 2 * p1 * x * y + p2 * (r2 + 2 * x * x);
        out[1] = y * radial + p1 * (r2 + 2 * y * y) + 2 * p2 * x * y;
    }

    /** The ideal place of what is seen at (xd, yd): Newton's method on {@link #distort}, exact to 10⁻¹² where it can be turned back. */
    public void undistort(double xd, double yd, double[] out) {
        double x = xd;
        double y = yd;
        for (int i = 0; i < MOST_STEPS; i++) {
            distort(x, y, out);
            double ex = out[0] - xd;
            double ey = out[1] - yd;
            if (ex * ex + ey * ey < CLOSE * CLOSE) {
                break;
            }
            double r2 = x * x + y * y;
            double radial = 1 + r2 * (k1 + r2 * k2);
            double slope = 2 * k1 + 4 * k2 * r2;
            double xx = radial + x * x * slope + 2 * p1 * y + 6 * p2 * x;
            double xy = x * y * slope + 2 * p1 * x + 2 * p2 * y;
            double yy = radial + y * y * slope + 6 * p1 * y + 2 * p2 * x;
            double det = xx * yy - xy * xy;
            if (!(det > 0.05)) {
                // beyond the fold of the polynomial nothing can be turned back: stay where the last step led
                break;
            }
            x -= (yy * ex - xy * ey) / det;
            y -= (xx * ey - xy * ex) / det;
        }
        out[0] = x;
        out[1] = y;
    }
}
