package puzzleworkshop.pattern.edges;

import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * One edge as a solver's fingers feel it: its curve taken off the board, laid with its straight line from end to end
 * along x and its middle at zero, as {@value #POINTS} points evenly spaced along the curve.
 *
 * <p>{@link #distanceTo} is the greatest distance that remains between two such curves after the best small shift and
 * turn: of all rigid motions the one that makes the greatest distance least (Chebyshev's sense). It is found by
 * reweighted least squares on the distances across the curve (Lawson's method, 1961; each round one 3 × 3 system), from
 * the edges laid chord on chord. A mirrored edge is another edge: a piece has a picture on one side. The same edge seen from
 * the piece beyond it is {@link #turned}.
 */
public final class EdgeShape {

    public static final int POINTS = 48;
    private static final int ROUNDS = 9;
    private static final int REACH = 3;
    /** The bound holds to first order only. */
    private static final double BOUND_SLACK = 1.05;

    private static final int LINEAR_ROUNDS = 4;
    private static final double LINEAR_SLACK = 1.2;
    private static final double MARK_SLACK = 2.0;
    private static final double WAVE_SLACK = 1.8;
    private static final int WAVES = 5;
    static final int MARKS = 3 + 2 * WAVES;
    private static final double[][] COSINES = cosines();

    final double chordMm;
    /** Greatest reach to eight sides, and other measures that a small motion hardly changes: see {@link #couldBeWithin}. */
    public final float[] marks;

    private final double[] x;
    private final double[] y;
    private final double[] across;
    private final double[] along;
    /** How far a point moves across the curve for a turn of one. */
    private final double[] lever;
    /** Inverse of the normal equations of a motion (shift x, shift y, turn) felt across the curve. */
    private final double[] inverse;

    private EdgeShape(double[] x, double[] y, double chordMm) {
        this.x = x;
        this.y = y;
        this.chordMm = chordMm;
        across = new double[POINTS];
        along = new double[POINTS];
        lever = new double[POINTS];
        double[] m = new double[6];
        for (int i = 0; i < POINTS; i++) {
            int before = Math.max(0, i - 1);
            int after = Math.min(POINTS - 1, i + 1);
            double dx = x[after] - x[before];
            double dy = y[after] - y[before];
            double length = Math.sqrt(dx * dx + dy * dy);
            across[i] = -dy / length;
            along[i] = dx / length;
            lever[i] = along[i] * x[i] - across[i] * y[i];
            add(m, across[i], along[i], lever[i], 1);
        }
        inverse = inverse(m);
        marks = marks();
    }

    public double lengthMm() {
        double length = 0;
        for (int i = 1; i < POINTS; i++) {
            length += Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
        }
        return length;
    }

    private static double[][] cosines() {
        double[][] waves = new double[WAVES][POINTS];
        for (int k = 0; k < WAVES; k++) {
            for (int i = 0; i < POINTS; i++) {
                waves[k][i] = (k == 0 ? 1 : Math.sqrt(2)) * StrictMath.cos(Math.PI * k * (i + 0.5) / POINTS) / POINTS;
            }
        }
        return waves;
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

    private float[] marks() {
        double up = 0;
        double down = 0;
        float[] found = new float[MARKS];
        for (int i = 0; i < POINTS; i++) {
            up = Math.max(up, y[i]);
            down = Math.max(down, -y[i]);
            for (int k = 0; k < WAVES; k++) {
                found[3 + 2 * k] += (float) (x[i] * COSINES[k][i]);
                found[4 + 2 * k] += (float) (y[i] * COSINES[k][i]);
            }
        }
        found[0] = (float) chordMm;
        found[1] = (float) up;
        found[2] = (float) down;
        return found;
    }

    /**
     * Quick: false where the distance is above the limit. Chord and heights change by at most twice the distance; the
     * first waves of the curve by no more than the root mean square of what lies between the two (Bessel's inequality).
     * Both with slack for the small turn that is still to come. The other's marks lie in a long row of many.
     */
    public boolean couldBeWithin(float[] all, int from, double limitMm) {
        float[] mine = marks;
        double slack = MARK_SLACK * limitMm;
        if (Math.abs(mine[0] - all[from]) > slack
                || Math.abs(mine[1] - all[from + 1]) > slack
                || Math.abs(mine[2] - all[from + 2]) > slack) {
            return false;
        }
        double most = WAVE_SLACK * WAVE_SLACK * limitMm * limitMm;
        double sum = 0;
        for (int i = 3; i < MARKS; i++) {
            double d = mine[i] - all[from + i];
            sum += d * d;
            if (sum > most) {
                return false;
            }
        }
        return true;
    }

    /** What {@link #couldBeWithin} asks after the marks. */
    public boolean mayFit(EdgeShape other, double limitMm) {
        return mayFitWithin(other, LINEAR_SLACK * limitMm);
    }

    /**
     * Whether, to first order and point for point, some motion may leave no distance across the curve above the limit:
     * weighted least squares, the weight moved to where the distance is greatest; in each round its root mean square is a
     * lower bound of the greatest distance.
     */
    private boolean mayFitWithin(EdgeShape other, double limit) {
        double[] gap = new double[POINTS];
        double bx = 0;
        double by = 0;
        double bt = 0;
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            double g = across[i] * (other.x[i] - x[i]) + along[i] * (other.y[i] - y[i]);
            gap[i] = g;
            bx += across[i] * g;
            by += along[i] * g;
            bt += lever[i] * g;
            sum += g * g;
        }
        double[] v = inverse;
        double[] weight = null;
        double[] m = null;
        double whole = POINTS;
        for (int round = 0; ; round++) {
            double dx = v[0] * bx + v[1] * by + v[2] * bt;
            double dy = v[1] * bx + v[3] * by + v[4] * bt;
            double dt = v[2] * bx + v[4] * by + v[5] * bt;
            if (sum - (dx * bx + dy * by + dt * bt) > limit * limit * whole) {
                return false;
            }
            if (round == LINEAR_ROUNDS) {
                return true;
            }
            if (weight == null) {
                weight = new double[POINTS];
                java.util.Arrays.fill(weight, 1);
                m = new double[6];
            } else {
                java.util.Arrays.fill(m, 0);
            }
            bx = 0;
            by = 0;
            bt = 0;
            sum = 0;
            whole = 0;
            for (int i = 0; i < POINTS; i++) {
                double left = gap[i] - across[i] * dx - along[i] * dy - lever[i] * dt;
                double w = weight[i] * (Math.abs(left) + 0.02 * limit);
                weight[i] = w;
                whole += w;
                add(m, across[i], along[i], lever[i], w);
                bx += w * across[i] * gap[i];
                by += w * along[i] * gap[i];
                bt += w * lever[i] * gap[i];
                sum += w * gap[i] * gap[i];
            }
            v = inverse(m);
        }
    }

    /**
     * Greatest distance after the best motion, in millimetres; where it is above the limit, some number above the
     * limit.
     *
     * <p>In each round the weighted root mean square after its own best motion is a lower bound of what any motion leaves;
     * as soon as it is above the limit, the search ends.
     */
    public double distanceTo(EdgeShape other, double limitMm) {
        return distanceTo(other, limitMm, new double[0]);
    }

    /** @param apartMm filled with the distance of each of the {@link #POINTS} places in the same position; may be empty */
    public double distanceTo(EdgeShape other, double limitMm, double[] apartMm) {
        double sx = 0;
        double sy = 0;
        double turn = 0;
        double best = Double.POSITIVE_INFINITY;
        double[] weight = new double[POINTS];
        java.util.Arrays.fill(weight, 1.0 / POINTS);
        double[] gaps = new double[POINTS];
        int[] nearest = new int[POINTS];
        for (int i = 0; i < POINTS; i++) {
            nearest[i] = i;
        }
        double[] found = new double[2];
        double[] m = new double[6];
        for (int round = 0; round < ROUNDS; round++) {
            // a small turn: the first terms are exact to a thousandth of a degree
            double cos = 1 - turn * turn / 2 + turn * turn * turn * turn / 24;
            double sin = turn - turn * turn * turn / 6;
            java.util.Arrays.fill(m, 0);
            double bx = 0;
            double by = 0;
            double bt = 0;
            double greatest = 0;
            double squares = 0;
            for (int i = 0; i < POINTS; i++) {
                double px = cos * x[i] - sin * y[i] + sx;
                double py = sin * x[i] + cos * y[i] + sy;
                double w = weight[i];
                if (i == 0 || i == POINTS - 1) {
                    // ends meet ends: felt along the curve as well
                    double gx = other.x[i] - px;
                    double gy = other.y[i] - py;
                    gaps[i] = Math.sqrt(gx * gx + gy * gy);
                    add(m, 1, 0, -(py - sy), w);
                    add(m, 0, 1, px - sx, w);
                    bx += w * gx;
                    by += w * gy;
                    bt += w * (gy * (px - sx) - gx * (py - sy));
                } else {
                    other.nearest(px, py, nearest, i, found);
                    double gx = found[0] - px;
                    double gy = found[1] - py;
                    double distance = Math.sqrt(gx * gx + gy * gy);
                    gaps[i] = distance;
                    double nx = distance > 1e-9 ? gx / distance : cos * across[i] - sin * along[i];
                    double ny = distance > 1e-9 ? gy / distance : sin * across[i] + cos * along[i];
                    double lever = ny * (px - sx) - nx * (py - sy);
                    add(m, nx, ny, lever, w);
                    bx += w * nx * distance;
                    by += w * ny * distance;
                    bt += w * lever * distance;
                }
                greatest = Math.max(greatest, gaps[i]);
                squares += w * gaps[i] * gaps[i];
            }
            if (greatest < best) {
                best = greatest;
                System.arraycopy(gaps, 0, apartMm, 0, apartMm.length);
            }
            if (best <= limitMm / 2) {
                return best;
            }
            double[] v = inverse(m);
            double dx = v[0] * bx + v[1] * by + v[2] * bt;
            double dy = v[1] * bx + v[3] * by + v[4] * bt;
            double dt = v[2] * bx + v[4] * by + v[5] * bt;
            double least = Math.sqrt(Math.max(0, squares - (dx * bx + dy * by + dt * bt)));
            if (round > 0 && least > BOUND_SLACK * limitMm) {
                return Math.max(best, least);
            }
            sx += dx;
            sy += dy;
            turn += dt;
            if (round > 0) {
                double sum = 0;
                for (int i = 0; i < POINTS; i++) {
                    weight[i] *= gaps[i] / greatest + 0.02;
                    sum += weight[i];
                }
                for (int i = 0; i < POINTS; i++) {
                    weight[i] /= sum;
                }
            }
        }
        return best;
    }

    /** The place on this curve nearest to a point, looked for near the index found last time. */
    private void nearest(double px, double py, int[] index, int i, double[] found) {
        int from = Math.max(0, index[i] - REACH);
        int to = Math.min(POINTS - 2, index[i] + REACH);
        double least = Double.POSITIVE_INFINITY;
        for (int k = from; k <= to; k++) {
            double dx = x[k + 1] - x[k];
            double dy = y[k + 1] - y[k];
            double t = ((px - x[k]) * dx + (py - y[k]) * dy) / (dx * dx + dy * dy);
            t = t < 0 ? 0 : Math.min(t, 1);
            double qx = x[k] + t * dx;
            double qy = y[k] + t * dy;
            double square = (qx - px) * (qx - px) + (qy - py) * (qy - py);
            if (square < least) {
                least = square;
                found[0] = qx;
                found[1] = qy;
                index[i] = k;
            }
        }
    }

    private static void add(double[] m, double a, double b, double c, double w) {
        m[0] += w * a * a;
        m[1] += w * a * b;
        m[2] += w * a * c;
        m[3] += w * b * b;
        m[4] += w * b * c;
        m[5] += w * c * c;
    }

    /** Of a symmetric 3 × 3 matrix, kept as its upper rows. A straight edge cannot feel a shift along itself: eased. */
    private static double[] inverse(double[] m) {
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
