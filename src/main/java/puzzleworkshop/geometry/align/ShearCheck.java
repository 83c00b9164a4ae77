package puzzleworkshop.geometry.align;

import java.util.List;
import puzzleworkshop.geometry.Point;

/**
 * Whether a print is out of square or longer one way than the other, which no shift, turn and even stretch can follow:
 * the best affine map through the marks, and how much of it is neither turn nor even stretch. Needs four marks to have
 * something left to judge by.
 *
 * <p>Method: least squares of both coordinates for themselves (q = M·p about the middles, M = Σ q·pᵀ · (Σ p·pᵀ)⁻¹). What an
 * affine map has beyond a similarity are two numbers: m₁₁ − m₂₂, by which x is longer than y, and m₁₂ + m₂₁, by which the
 * right angle is missed.
 *
 * @param uneven how much longer x is than y, as a share
 * @param skew by how much the right angle is missed, radians
 * @param deviation standard deviation of either, from the readings
 * @param squares Σ of the squared distances, mm², that even the affine map leaves
 */
public record ShearCheck(double uneven, double skew, double deviation, double squares) {

    /** Standard deviations; either number passes them by chance once in about a thousand measurings (normal distribution). */
    private static final double SURE = 3.3;

    /**
     * @param place the best similarity, so that turn and stretch are taken out first
     * @param reading standard deviation of a reading along an axis, mm
     */
    public static ShearCheck of(List<Point> drawn, List<Point> seen, Similarity place, double reading) {
        Point middle = SimilarityFit.middle(drawn);
        Point back = SimilarityFit.middle(seen.stream().map(place::backwards).toList());
        double xx = 0;
        double xy = 0;
        double yy = 0;
        double[] cross = new double[4];
        for (int i = 0; i < drawn.size(); i++) {
            double px = drawn.get(i).xMm() - middle.xMm();
            double py = drawn.get(i).yMm() - middle.yMm();
            Point q = place.backwards(seen.get(i));
            double qx = q.xMm() - back.xMm();
            double qy = q.yMm() - back.yMm();
            xx += px * px;
            xy += px * py;
            yy += py * py;
            cross[0] += qx * px;
            cross[1] += qx * py;
            cross[2] += qy * px;
            cross[3] += qy * py;
        }
        double det = xx * yy - xy * xy;
        if (!(det > 1e-6 * (xx + yy) * (xx + yy))) {
            throw new IllegalArgumentException("Marks in one line say nothing about a right angle");
        }
        double m11 = (cross[0] * yy - cross[1] * xy) / det;
        double m12 = (cross[1] * xx - cross[0] * xy) / det;
        double m21 = (cross[2] * yy - cross[3] * xy) / det;
        double m22 = (cross[3] * xx - cross[2] * xy) / det;
        double own = reading / place.stretch();
        // variances of the four numbers: yy, xx, yy, xx, each times own²/det (linear regression)
        double squares = 0;
        for (int i = 0; i < drawn.size(); i++) {
            double px = drawn.get(i).xMm() - middle.xMm();
            double py = drawn.get(i).yMm() - middle.yMm();
            Point q = place.backwards(seen.get(i));
            double ex = q.xMm() - back.xMm() - m11 * px - m12 * py;
            double ey = q.yMm() - back.yMm() - m21 * px - m22 * py;
            squares += (ex * ex + ey * ey) * place.stretch() * place.stretch();
        }
        return new ShearCheck(m11 - m22, m12 + m21, own * Math.sqrt((xx + yy) / det), squares);
    }

    /** Whether what was found is more than reading errors make. */
    public boolean isReal() {
        return Math.max(Math.abs(uneven), Math.abs(skew)) > SURE * deviation;
    }
}
