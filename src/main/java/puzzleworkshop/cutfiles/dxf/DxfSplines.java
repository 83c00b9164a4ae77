package puzzleworkshop.cutfiles.dxf;

import java.awt.geom.Path2D;
import java.util.Arrays;
import puzzleworkshop.measure.WorkLimit;

/**
 * Splines of DXF. Rational B-splines of any degree are evaluated by de Boor's rule in homogeneous coordinates (Piegl and
 * Tiller, The NURBS Book, 2nd edition, chapter 4); between two knots they are drawn with so many chords that halving them
 * moves no point by more than the tolerance.
 */
final class DxfSplines {

    private static final double TOLERANCE_SHARE = 2e-6;
    private static final int MOST_CHORDS = 1024;
    private static final int HIGHEST_DEGREE = 25;

    private final int degree;
    private final double[] knots;
    private final double[][] control;
    private final WorkLimit limit;

    private DxfSplines(int degree, double[] knots, double[][] control, WorkLimit limit) {
        this.degree = degree;
        this.knots = knots;
        this.control = control;
        this.limit = limit;
    }

    /**
     * @param path the curve
     * @param open whether it is called closed but does not return to its start
     * @param fitted whether only points to run through are given, so that the curve between them is a custom
     */
    record Drawn(Path2D path, boolean open, boolean fitted) {}

    /** @throws IllegalArgumentException when points, knots and degree do not belong together */
    static Drawn of(DxfThing thing, WorkLimit limit) {
        double[] x = thing.all(10);
        double[] y = thing.all(20);
        boolean closed = thing.has(70, DxfCurves.CLOSED);
        if (x.length == 0) {
            return new Drawn(FitPoints.curve(thing, closed, limit), false, true);
        }
        double[] weights = thing.all(41);
        double[] knots = thing.all(40);
        int degree = thing.whole(71, 3);
        if (x.length <= degree
                || degree < 1
                || degree > HIGHEST_DEGREE
                || y.length != x.length
                || knots.length != x.length + degree + 1
                || weights.length != 0 && weights.length != x.length) {
            throw new IllegalArgumentException("A spline whose numbers do not belong together");
        }
        for (int i = 1; i < knots.length; i++) {
            if (!(knots[i] >= knots[i - 1])) {
                throw new IllegalArgumentException("Knots run backwards");
            }
        }
        double[][] control = new double[x.length][];
        for (int i = 0; i < control.length; i++) {
            double weight = weights.length == 0 ? 1 : weights[i];
            if (!(weight > 0)) {
                throw new IllegalArgumentException("A weight that is not above zero");
            }
            control[i] = new double[] {x[i] * weight, y[i] * weight, weight};
        }
        DxfSplines spline = new DxfSplines(degree, knots, control, limit);
        Path2D.Double path = new Path2D.Double();
        double gap = spline.draw(path);
        boolean returns = gap < 1e-6 * spline.extent();
        if (closed && returns) {
            path.closePath();
        }
        return new Drawn(path, closed && !returns, false);
    }

    private double extent() {
        double extent = 0;
        for (double[] c : control) {
            extent = Math.max(
                    extent,
                    Math.hypot(
                            c[0] / c[2] - control[0][0] / control[0][2], c[1] / c[2] - control[0][1] / control[0][2]));
        }
        return extent;
    }

    /** How far the end is from the start. */
    private double draw(Path2D path) {
        double tolerance = extent() * TOLERANCE_SHARE;
        double[] start = at(degree, knots[degree]);
        double[] end = start;
        path.moveTo(start[0], start[1]);
        for (int span = degree; span < control.length; span++) {
            limit.steps(1);
            if (knots[span + 1] > knots[span]) {
                end = drawSpan(path, span, tolerance);
            }
        }
        return Math.hypot(end[0] - start[0], end[1] - start[1]);
    }

    private double[] drawSpan(Path2D path, int span, double tolerance) {
        double from = knots[span];
        double to = knots[span + 1];
        int chords = degree == 1 ? 1 : 8;
        while (degree > 1 && chords < MOST_CHORDS && farthestFromChord(span, from, to, chords) > tolerance) {
            chords *= 2;
        }
        double[] p = {0, 0};
        for (int i = 1; i <= chords; i++) {
            p = at(span, from + (to - from) * i / chords);
            path.lineTo(p[0], p[1]);
        }
        return p;
    }

    private double farthestFromChord(int span, double from, double to, int chords) {
        double farthest = 0;
        double[] a = at(span, from);
        for (int i = 0; i < chords; i++) {
            double[] middle = at(span, from + (to - from) * (i + 0.5) / chords);
            double[] b = at(span, from + (to - from) * (i + 1) / chords);
            farthest = Math.max(farthest, java.awt.geom.Line2D.ptSegDist(a[0], a[1], b[0], b[1], middle[0], middle[1]));
            a = b;
        }
        return farthest;
    }

    private double[] at(int span, double u) {
        limit.steps(1 + degree * degree / 16);
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

    /**
     * A curve through points alone: the cubic spline with chords as its parameter, its end directions where they are
     * given, free ends (no bend) otherwise, as drawing programs usually do (de Boor, A Practical Guide to Splines,
     * revised edition 2001, chapter IV: 'cubic spline interpolation', free and complete end conditions).
     */
    private static final class FitPoints {

        private FitPoints() {}

        static Path2D curve(DxfThing thing, boolean closed, WorkLimit limit) {
            double[] x = thing.all(11);
            double[] y = thing.all(21);
            if (x.length < 2 || x.length != y.length) {
                throw new IllegalArgumentException("A spline without enough points");
            }
            limit.steps(x.length * 8L);
            int n = x.length;
            if (closed && (x[0] != x[n - 1] || y[0] != y[n - 1])) {
                x = Arrays.copyOf(x, n + 1);
                y = Arrays.copyOf(y, n + 1);
                x[n] = x[0];
                y[n] = y[0];
                n++;
            }
            double[] step = new double[n - 1];
            for (int i = 0; i < n - 1; i++) {
                step[i] = Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]);
                if (!(step[i] > 0)) {
                    throw new IllegalArgumentException("Two points of a spline are one");
                }
            }
            double[] start = direction(thing, 12, 22);
            double[] end = direction(thing, 13, 23);
            double[] slopeX = closed ? CubicSlopes.closed(x, step) : CubicSlopes.open(x, step, start, end, 0);
            double[] slopeY = closed ? CubicSlopes.closed(y, step) : CubicSlopes.open(y, step, start, end, 1);
            Path2D.Double path = new Path2D.Double();
            path.moveTo(x[0], y[0]);
            for (int i = 0; i < n - 1; i++) {
                double third = step[i] / 3;
                path.curveTo(
                        x[i] + slopeX[i] * third,
                        y[i] + slopeY[i] * third,
                        x[i + 1] - slopeX[i + 1] * third,
                        y[i + 1] - slopeY[i + 1] * third,
                        x[i + 1],
                        y[i + 1]);
            }
            if (closed) {
                path.closePath();
            }
            return path;
        }

        /** Of length one; null where none is given. */
        private static double[] direction(DxfThing thing, int codeX, int codeY) {
            double x = thing.number(codeX, 0);
            double y = thing.number(codeY, 0);
            double length = Math.hypot(x, y);
            return length > 0 ? new double[] {x / length, y / length} : null;
        }
    }
}
