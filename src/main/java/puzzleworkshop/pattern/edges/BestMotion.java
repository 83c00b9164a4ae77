package puzzleworkshop.pattern.edges;

import java.util.Arrays;

/**
 * The small shift and turn that lays one edge best upon another: of all rigid motions the one that makes the greatest distance
 * least (Chebyshev's sense). It is found by reweighted least squares on the distances across the curve (Lawson's method,
 * 1961; each round one 3 × 3 system), from the edges laid chord on chord.
 */
final class BestMotion {

    private static final int ROUNDS = 9;
    private static final int REACH = 3;
    /** The bound holds to first order only. */
    private static final double BOUND_SLACK = 1.05;

    private final EdgeShape one;
    private final EdgeShape other;
    /** The other's stretches from point to point. */
    private final double[] stepX = new double[EdgeShape.POINTS - 1];

    private final double[] stepY = new double[EdgeShape.POINTS - 1];
    private final double[] stepSquare = new double[EdgeShape.POINTS - 1];
    /** For each point of the one: on which stretch of the other the nearest place was last, and where it is. */
    private final int[] stretch = new int[EdgeShape.POINTS];

    private double nearestX;
    private double nearestY;

    private BestMotion(EdgeShape one, EdgeShape other) {
        this.one = one;
        this.other = other;
        for (int k = 0; k < stepX.length; k++) {
            double dx = other.x[k + 1] - other.x[k];
            double dy = other.y[k + 1] - other.y[k];
            stepX[k] = dx;
            stepY[k] = dy;
            stepSquare[k] = dx * dx + dy * dy;
        }
        for (int i = 0; i < EdgeShape.POINTS; i++) {
            stretch[i] = i;
        }
    }

    /** Greatest distance after the best motion, in millimetres; where it is above the limit, some number above the limit. */
    static double distanceMm(EdgeShape one, EdgeShape other, double limitMm) {
        return distanceMm(one, other, limitMm, new double[0]);
    }

    /**
     * The same.
     *
     * @param apartMm filled with the distance of each of the {@link EdgeShape#POINTS} places in the same position; may be
     *     empty
     */
    static double distanceMm(EdgeShape one, EdgeShape other, double limitMm, double[] apartMm) {
        return new BestMotion(one, other).distanceMm(limitMm, apartMm);
    }

    /**
     * In each round the weighted root mean square after its own best motion is a lower bound of what any motion leaves; as
     * soon as it is above the limit, the search ends.
     */
    private double distanceMm(double limitMm, double[] apartMm) {
        double[] x = one.x;
        double[] y = one.y;
        double[] across = one.across;
        double[] along = one.along;
        double sx = 0;
        double sy = 0;
        double turn = 0;
        double best = Double.POSITIVE_INFINITY;
        double[] weight = new double[EdgeShape.POINTS];
        Arrays.fill(weight, 1.0 / EdgeShape.POINTS);
        double[] gaps = new double[EdgeShape.POINTS];
        for (int round = 0; round < ROUNDS; round++) {
            // a small turn: the first terms are exact to a thousandth of a degree
            double cos = 1 - turn * turn / 2 + turn * turn * turn * turn / 24;
            double sin = turn - turn * turn * turn / 6;
            double xx = 0;
            double xy = 0;
            double xt = 0;
            double yy = 0;
            double yt = 0;
            double tt = 0;
            double bx = 0;
            double by = 0;
            double bt = 0;
            double greatest = 0;
            double squares = 0;
            for (int i = 0; i < EdgeShape.POINTS; i++) {
                double px = cos * x[i] - sin * y[i] + sx;
                double py = sin * x[i] + cos * y[i] + sy;
                double w = weight[i];
                if (i == 0 || i == EdgeShape.POINTS - 1) {
                    // ends meet ends: felt along the curve as well
                    double gx = other.x[i] - px;
                    double gy = other.y[i] - py;
                    gaps[i] = Math.sqrt(gx * gx + gy * gy);
                    double up = -(py - sy);
                    double right = px - sx;
                    xx += w;
                    xt += w * up;
                    tt += w * up * up;
                    yy += w;
                    yt += w * right;
                    tt += w * right * right;
                    bx += w * gx;
                    by += w * gy;
                    bt += w * (gy * (px - sx) - gx * (py - sy));
                } else {
                    findNearest(px, py, i);
                    double gx = nearestX - px;
                    double gy = nearestY - py;
                    double distance = Math.sqrt(gx * gx + gy * gy);
                    gaps[i] = distance;
                    double nx = distance > 1e-9 ? gx / distance : cos * across[i] - sin * along[i];
                    double ny = distance > 1e-9 ? gy / distance : sin * across[i] + cos * along[i];
                    double lever = ny * (px - sx) - nx * (py - sy);
                    double wx = w * nx;
                    double wy = w * ny;
                    double wt = w * lever;
                    xx += wx * nx;
                    xy += wx * ny;
                    xt += wx * lever;
                    yy += wy * ny;
                    yt += wy * lever;
                    tt += wt * lever;
                    bx += wx * distance;
                    by += wy * distance;
                    bt += wt * distance;
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
            double[] v = NormalEquations.inverse(xx, xy, xt, yy, yt, tt);
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
                moveWeight(weight, gaps, greatest);
            }
        }
        return best;
    }

    private static void moveWeight(double[] weight, double[] gaps, double greatest) {
        double sum = 0;
        for (int i = 0; i < EdgeShape.POINTS; i++) {
            weight[i] *= gaps[i] / greatest + 0.02;
            sum += weight[i];
        }
        for (int i = 0; i < EdgeShape.POINTS; i++) {
            weight[i] /= sum;
        }
    }

    /** The place on the other nearest to where point i lies now, looked for near the stretch found last time. */
    private void findNearest(double px, double py, int i) {
        int from = Math.max(0, stretch[i] - REACH);
        int to = Math.min(EdgeShape.POINTS - 2, stretch[i] + REACH);
        double least = Double.POSITIVE_INFINITY;
        double x = px;
        double y = py;
        for (int k = from; k <= to; k++) {
            double qx = other.x[k];
            double qy = other.y[k];
            double along = (px - qx) * stepX[k] + (py - qy) * stepY[k];
            if (along >= stepSquare[k]) {
                qx += stepX[k];
                qy += stepY[k];
            } else if (along > 0) {
                // only here a division, which takes longer than all the rest
                double t = along / stepSquare[k];
                qx += t * stepX[k];
                qy += t * stepY[k];
            }
            double square = (qx - px) * (qx - px) + (qy - py) * (qy - py);
            if (square < least) {
                least = square;
                x = qx;
                y = qy;
                stretch[i] = k;
            }
        }
        nearestX = x;
        nearestY = y;
    }
}
