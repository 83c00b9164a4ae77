package puzzleworkshop.geometry.path;

import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;

/**
 * One stretch of a {@link CurvePath}: a straight line or a cubic Bézier curve. It starts where the stretch before it
 * ends, so everything that is asked of it takes that starting point. Parameters t run from 0 (start) to 1 (end).
 */
public sealed interface Segment {

    /** Where the stretch ends. */
    Point to();

    Point at(Point from, double t);

    /** Length in millimetres; a curve's to about 1e-9 of itself. */
    double lengthMm(Point from);

    /** Velocity with respect to t, in mm; x is {@code [0]}. Zero where a control point coincides with its end. */
    double[] velocity(Point from, double t);

    /**
     * Signed curvature in 1/mm, positive when turning clockwise as seen on the screen (x towards y); 1/|curvature| is
     * the radius. Zero on a line; infinite at a cusp.
     */
    double curvature(Point from, double t);

    /** The same stretch run the other way, to be started from {@link #to()}. */
    Segment reversed(Point from);

    Bounds bounds(Point from);

    /** Into how many equal steps of t it must be divided so that chords stay within the tolerance; a bound. */
    int steps(Point from, double toleranceMm);

    /** The part between two parameters, to be started from {@code at(from, t0)}; the same curve, not an approximation. */
    Segment part(Point from, double t0, double t1);

    /** A straight stretch. */
    record Line(Point to) implements Segment {

        @Override
        public Point at(Point from, double t) {
            return from.towards(to, t);
        }

        @Override
        public double lengthMm(Point from) {
            return from.distanceTo(to);
        }

        @Override
        public double[] velocity(Point from, double t) {
            return new double[] {to.xMm() - from.xMm(), to.yMm() - from.yMm()};
        }

        @Override
        public double curvature(Point from, double t) {
            return 0;
        }

        @Override
        public Segment reversed(Point from) {
            return new Line(from);
        }

        @Override
        public Bounds bounds(Point from) {
            return Bounds.at(from).and(to);
        }

        @Override
        public int steps(Point from, double toleranceMm) {
            return 1;
        }

        @Override
        public Segment part(Point from, double t0, double t1) {
            return new Line(t1 == 1 ? to : at(from, t1));
        }
    }

    /** A cubic Bézier curve with its two control points. */
    record Cubic(Point control1, Point control2, Point to) implements Segment {

        @Override
        public Point at(Point from, double t) {
            return new Point(
                    CubicMath.value(from.xMm(), control1.xMm(), control2.xMm(), to.xMm(), t),
                    CubicMath.value(from.yMm(), control1.yMm(), control2.yMm(), to.yMm(), t));
        }

        @Override
        public double lengthMm(Point from) {
            return CubicMath.length(from, this);
        }

        @Override
        public double[] velocity(Point from, double t) {
            return new double[] {
                CubicMath.slope(from.xMm(), control1.xMm(), control2.xMm(), to.xMm(), t),
                CubicMath.slope(from.yMm(), control1.yMm(), control2.yMm(), to.yMm(), t)
            };
        }

        @Override
        public double curvature(Point from, double t) {
            double[] v = velocity(from, t);
            double ax = CubicMath.bend(from.xMm(), control1.xMm(), control2.xMm(), to.xMm(), t);
            double ay = CubicMath.bend(from.yMm(), control1.yMm(), control2.yMm(), to.yMm(), t);
            double speed = Math.sqrt(v[0] * v[0] + v[1] * v[1]);
            double turn = v[0] * ay - v[1] * ax;
            return turn == 0 ? 0 : turn / (speed * speed * speed);
        }

        @Override
        public Segment reversed(Point from) {
            return new Cubic(control2, control1, from);
        }

        @Override
        public Bounds bounds(Point from) {
            double[] x = CubicMath.range(from.xMm(), control1.xMm(), control2.xMm(), to.xMm());
            double[] y = CubicMath.range(from.yMm(), control1.yMm(), control2.yMm(), to.yMm());
            return new Bounds(x[0], y[0], x[1], y[1]);
        }

        @Override
        public int steps(Point from, double toleranceMm) {
            return CubicMath.steps(from, this, toleranceMm);
        }

        @Override
        public Segment part(Point from, double t0, double t1) {
            // by de Casteljau: the first t1 of it, then what follows t0 of that
            Point a = from.towards(control1, t1);
            Point middle = control1.towards(control2, t1);
            Point b = a.towards(middle, t1);
            Point end = b.towards(middle.towards(control2.towards(to, t1), t1), t1);
            double share = t1 == 0 ? 0 : t0 / t1;
            Point c = b.towards(end, share);
            Point d = a.towards(b, share).towards(c, share);
            return new Cubic(d, c, t1 == 1 ? to : end);
        }
    }
}
