package puzzleworkshop.pattern.edges;

import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * One edge as a solver's fingers feel it: its curve taken off the board, laid with its straight line from end to end
 * along x and its middle at zero, as {@value #POINTS} points evenly spaced along the curve.
 *
 * <p>{@link #distanceTo} is the greatest distance that remains between two such curves after the best small shift and
 * turn. A mirrored edge is another edge: a piece has a picture on one side. The same edge seen from the piece beyond it is
 * {@link #turned}.
 */
public final class EdgeShape {

    static final int POINTS = 48;

    final float[] marks;
    final double[] x;
    final double[] y;
    /** Unit vector across the curve, as its two parts; they are also those of the tangent. */
    final double[] across;

    final double[] along;
    /** How far a point moves across the curve for a turn of one. */
    final double[] lever;
    /** Inverse of the normal equations of a motion felt across the curve, every point alike. */
    final double[] inverse;

    private final double chordMm;

    private EdgeShape(double[] x, double[] y, double chordMm) {
        this.x = x;
        this.y = y;
        this.chordMm = chordMm;
        across = new double[POINTS];
        along = new double[POINTS];
        lever = new double[POINTS];
        double xx = 0;
        double xy = 0;
        double xt = 0;
        double yy = 0;
        double yt = 0;
        double tt = 0;
        for (int i = 0; i < POINTS; i++) {
            int before = Math.max(0, i - 1);
            int after = Math.min(POINTS - 1, i + 1);
            double dx = x[after] - x[before];
            double dy = y[after] - y[before];
            double length = Math.sqrt(dx * dx + dy * dy);
            across[i] = -dy / length;
            along[i] = dx / length;
            lever[i] = along[i] * x[i] - across[i] * y[i];
            xx += across[i] * across[i];
            xy += across[i] * along[i];
            xt += across[i] * lever[i];
            yy += along[i] * along[i];
            yt += along[i] * lever[i];
            tt += lever[i] * lever[i];
        }
        inverse = NormalEquations.inverse(xx, xy, xt, yy, yt, tt);
        marks = EdgeMarks.of(x, y, chordMm);
    }

    public static EdgeShape of(CurvePath path) {
        return of(path.flattened(0.02));
    }

    public static EdgeShape of(List<Point> points) {
        int count = points.size();
        double[] way = new double[count];
        for (int i = 1; i < count; i++) {
            way[i] = way[i - 1] + points.get(i - 1).distanceTo(points.get(i));
        }
        Point a = points.getFirst();
        Point b = points.getLast();
        double chord = a.distanceTo(b);
        double ux = (b.xMm() - a.xMm()) / chord;
        double uy = (b.yMm() - a.yMm()) / chord;
        Point middle = a.towards(b, 0.5);
        double[] x = new double[POINTS];
        double[] y = new double[POINTS];
        int at = 1;
        for (int i = 0; i < POINTS; i++) {
            double wanted = way[count - 1] * i / (POINTS - 1);
            while (at < count - 1 && way[at] < wanted) {
                at++;
            }
            double share = way[at] == way[at - 1] ? 0 : Math.min(1, (wanted - way[at - 1]) / (way[at] - way[at - 1]));
            Point p = points.get(at - 1).towards(points.get(at), share);
            double dx = p.xMm() - middle.xMm();
            double dy = p.yMm() - middle.yMm();
            x[i] = dx * ux + dy * uy;
            y[i] = dy * ux - dx * uy;
        }
        return new EdgeShape(x, y, chord);
    }

    /** The same edge from the other side: half a turn. */
    public EdgeShape turned() {
        double[] tx = new double[POINTS];
        double[] ty = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            tx[i] = -x[POINTS - 1 - i];
            ty[i] = -y[POINTS - 1 - i];
        }
        return new EdgeShape(tx, ty, chordMm);
    }

    double lengthMm() {
        double length = 0;
        for (int i = 1; i < POINTS; i++) {
            length += Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
        }
        return length;
    }

    /** Quick: false where the distance is above the limit. */
    boolean couldBeWithin(EdgeShape other, double limitMm) {
        return EdgeMarks.apart(marks, other.marks, 0, limitMm) < Double.POSITIVE_INFINITY
                && FirstOrderFit.mayBeWithin(this, other, limitMm);
    }

    /**
     * Greatest distance after the best motion, in millimetres, as far as it is within the limit.
     *
     * @return some number above the limit where it is not; infinite where a quick look told so
     */
    public double distanceTo(EdgeShape other, double limitMm) {
        return couldBeWithin(other, limitMm) ? BestMotion.distanceMm(this, other, limitMm) : Double.POSITIVE_INFINITY;
    }
}
