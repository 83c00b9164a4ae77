package puzzleworkshop.cutfiles.reading;

import java.awt.Shape;
import java.awt.geom.Path2D;
import java.util.List;
import puzzleworkshop.geometry.path.SegmentDistance;

/**
 * A spline of DXF: rational B-spline of any degree, evaluated by de Boor's rule in homogeneous coordinates (Piegl and
 * Tiller, The NURBS Book, chapter 4). Between two knots it is one polynomial (or quotient) and is drawn with so many
 * chords that halving them moves no point by more than the tolerance.
 */
final class DxfSpline {

    private static final double TOLERANCE_SHARE = 1e-5;
    private static final int MOST_CHORDS = 1024;
    private static final int CLOSED = 1;

    private final int degree;
    private final double[] knots;
    private final double[][] control;

    private DxfSpline(int degree, double[] knots, double[][] control) {
        this.degree = degree;
        this.knots = knots;
        this.control = control;
    }

    static Shape of(DxfPairs.Thing thing) {
        List<Double> x = thing.all(10);
        List<Double> y = thing.all(20);
        List<Double> weights = thing.all(41);
        List<Double> knots = thing.all(40);
        int degree = thing.whole(71, 3);
        Path2D path = new Path2D.Double();
        if (x.size() <= degree || degree < 1 || knots.size() != x.size() + degree + 1) {
            return fitted(thing);
        }
        double[][] control = new double[x.size()][];
        for (int i = 0; i < control.length; i++) {
            double weight = weights.size() == control.length ? weights.get(i) : 1;
            control[i] = new double[] {x.get(i) * weight, y.get(i) * weight, weight};
        }
        DxfSpline spline = new DxfSpline(
                degree, knots.stream().mapToDouble(Double::doubleValue).toArray(), control);
        spline.draw(path);
        if ((thing.whole(70, 0) & CLOSED) != 0) {
            path.closePath();
        }
        return path;
    }

    /** A spline given by points to run through alone: straight from one to the next, as nothing else is stated. */
    private static Shape fitted(DxfPairs.Thing thing) {
        List<Double> x = thing.all(11);
        List<Double> y = thing.all(21);
        if (x.size() < 2 || x.size() != y.size()) {
            throw new IllegalArgumentException("A spline without enough points");
        }
        Path2D path = new Path2D.Double();
        path.moveTo(x.getFirst(), y.getFirst());
        for (int i = 1; i < x.size(); i++) {
            path.lineTo(x.get(i), y.get(i));
        }
        return path;
    }

    private void draw(Path2D path) {
        double extent = 0;
        for (double[] c : control) {
            extent = Math.max(
                    extent,
                    Math.hypot(
                            c[0] / c[2] - control[0][0] / control[0][2], c[1] / c[2] - control[0][1] / control[0][2]));
        }
        double[] start = at(knots[degree]);
        path.moveTo(start[0], start[1]);
        for (int span = degree; span < control.length; span++) {
            if (knots[span + 1] > knots[span]) {
                drawSpan(path, knots[span], knots[span + 1], extent * TOLERANCE_SHARE);
            }
        }
    }

    private void drawSpan(Path2D path, double from, double to, double tolerance) {
        int chords = 8;
        while (chords < MOST_CHORDS && farthestFromChord(from, to, chords) > tolerance) {
            chords *= 2;
        }
        for (int i = 1; i <= chords; i++) {
            double[] p = at(from + (to - from) * i / chords);
            path.lineTo(p[0], p[1]);
        }
    }

    private double farthestFromChord(double from, double to, int chords) {
        double farthest = 0;
        for (int i = 0; i < chords; i++) {
            double[] a = at(from + (to - from) * i / chords);
            double[] middle = at(from + (to - from) * (i + 0.5) / chords);
            double[] b = at(from + (to - from) * (i + 1) / chords);
            farthest = Math.max(farthest, SegmentDistance.toPoint(a[0], a[1], b[0], b[1], middle[0], middle[1]));
        }
        return farthest;
    }

    private double[] at(double u) {
        int span = degree;
        while (span < control.length - 1 && u >= knots[span + 1]) {
            span++;
        }
        double[][] d = new double[degree + 1][];
        for (int j = 0; j <= degree; j++) {
            d[j] = control[span - degree + j].clone();
        }
        for (int r = 1; r <= degree; r++) {
            for (int j = degree; j >= r; j--) {
                int i = span - degree + j;
                double width = knots[i + degree - r + 1] - knots[i];
                double share = width == 0 ? 0 : (u - knots[i]) / width;
                for (int k = 0; k < 3; k++) {
                    d[j][k] = (1 - share) * d[j - 1][k] + share * d[j][k];
                }
            }
        }
        return new double[] {d[degree][0] / d[degree][2], d[degree][1] / d[degree][2]};
    }
}
