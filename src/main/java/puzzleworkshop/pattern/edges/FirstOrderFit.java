package puzzleworkshop.pattern.edges;

import java.util.Arrays;

/**
 * Whether, to first order and point for point, some small motion may bring two curves within a distance of each other: asked
 * after the marks, before the best motion is looked for.
 *
 * <p>Weighted least squares on the distances across the curve, the weight moved to where the distance is greatest; in each
 * round its root mean square is a lower bound of the greatest distance.
 */
final class FirstOrderFit {

    private static final int ROUNDS = 4;
    private static final double SLACK = 1.2;

    private FirstOrderFit() {}

    static boolean mayBeWithin(EdgeShape one, EdgeShape other, double limitMm) {
        double limit = SLACK * limitMm;
        double[] across = one.across;
        double[] along = one.along;
        double[] lever = one.lever;
        double[] gap = new double[EdgeShape.POINTS];
        double bx = 0;
        double by = 0;
        double bt = 0;
        double sum = 0;
        for (int i = 0; i < EdgeShape.POINTS; i++) {
            double g = across[i] * (other.x[i] - one.x[i]) + along[i] * (other.y[i] - one.y[i]);
            gap[i] = g;
            bx += across[i] * g;
            by += along[i] * g;
            bt += lever[i] * g;
            sum += g * g;
        }
        double[] v = one.inverse;
        double[] weight = null;
        double whole = EdgeShape.POINTS;
        for (int round = 0; ; round++) {
            double dx = v[0] * bx + v[1] * by + v[2] * bt;
            double dy = v[1] * bx + v[3] * by + v[4] * bt;
            double dt = v[2] * bx + v[4] * by + v[5] * bt;
            if (sum - (dx * bx + dy * by + dt * bt) > limit * limit * whole) {
                return false;
            }
            if (round == ROUNDS) {
                return true;
            }
            if (weight == null) {
                weight = new double[EdgeShape.POINTS];
                Arrays.fill(weight, 1);
            }
            bx = 0;
            by = 0;
            bt = 0;
            sum = 0;
            whole = 0;
            double xx = 0;
            double xy = 0;
            double xt = 0;
            double yy = 0;
            double yt = 0;
            double tt = 0;
            for (int i = 0; i < EdgeShape.POINTS; i++) {
                double left = gap[i] - across[i] * dx - along[i] * dy - lever[i] * dt;
                double w = weight[i] * (Math.abs(left) + 0.02 * limit);
                weight[i] = w;
                whole += w;
                double wx = w * across[i];
                double wy = w * along[i];
                double wt = w * lever[i];
                xx += wx * across[i];
                xy += wx * along[i];
                xt += wx * lever[i];
                yy += wy * along[i];
                yt += wy * lever[i];
                tt += wt * lever[i];
                bx += wx * gap[i];
                by += wy * gap[i];
                bt += wt * gap[i];
                sum += w * gap[i] * gap[i];
            }
            v = NormalEquations.inverse(xx, xy, xt, yy, yt, tt);
        }
    }
}
