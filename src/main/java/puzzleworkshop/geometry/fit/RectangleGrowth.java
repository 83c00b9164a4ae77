package puzzleworkshop.geometry.fit;

import puzzleworkshop.geometry.Segments;

/**
 * Grows an upright rectangle inside a free area to the largest area in its neighbourhood.
 *
 * <p>Each piece of the border is kept off by one straight condition, the best separating axis of box and piece: one of
 * the four sides stays before it, or the nearest corner stays on its side of the piece's line. Under these
 * conditions log(width) + log(height) is concave in the four sides, and its maximum is found by Newton's method with
 * a logarithmic barrier (Boyd and Vandenberghe, Convex Optimization, ch. 11). Then the conditions are chosen anew,
 * until the area grows no more.
 */
final class RectangleGrowth {

    private static final int ROUNDS = 8;

    private final Segments border;
    private final double[][] conditions;
    private int count;

    private RectangleGrowth(Segments border) {
        this.border = border;
        this.conditions = new double[border.count][5];
    }

    /** @param seed left, top, right, bottom of a box that meets no border */
    static double[] grow(Segments border, double[] seed) {
        RectangleGrowth growth = new RectangleGrowth(border);
        double[] box = seed.clone();
        double before = 0;
        for (int round = 0; round < ROUNDS; round++) {
            double area = (box[2] - box[0]) * (box[3] - box[1]);
            if (area < before * (1 + 1e-9)) {
                break;
            }
            before = area;
            double margin = 1e-4 * Math.min(box[2] - box[0], box[3] - box[1]);
            double[] start = {box[0] + margin, box[1] + margin, box[2] - margin, box[3] - margin};
            growth.choose(start);
            double[] grown = growth.climb(start);
            if ((grown[2] - grown[0]) * (grown[3] - grown[1]) < area) {
                break;
            }
            box = grown;
        }
        return box;
    }

    /** For each border piece the condition a·box ≤ b with the most room. */
    private void choose(double[] box) {
        count = 0;
        double middleX = (box[0] + box[2]) / 2;
        double middleY = (box[1] + box[3]) / 2;
        for (int i = 0; i < border.count; i++) {
            double lowX = Math.min(border.ax[i], border.bx[i]);
            double highX = Math.max(border.ax[i], border.bx[i]);
            double lowY = Math.min(border.ay[i], border.by[i]);
            double highY = Math.max(border.ay[i], border.by[i]);
            double[] c = conditions[count];
            double room = 0;
            if (box[0] - highX > room) {
                room = box[0] - highX;
                set(c, -1, 0, 0, 0, -highX);
            }
            if (lowX - box[2] > room) {
                room = lowX - box[2];
                set(c, 0, 0, 1, 0, lowX);
            }
            if (box[1] - highY > room) {
                room = box[1] - highY;
                set(c, 0, -1, 0, 0, -highY);
            }
            if (lowY - box[3] > room) {
                room = lowY - box[3];
                set(c, 0, 0, 0, 1, lowY);
            }
            double nx = border.by[i] - border.ay[i];
            double ny = border.ax[i] - border.bx[i];
            double length = Math.sqrt(nx * nx + ny * ny);
            nx /= length;
            ny /= length;
            double offset = nx * border.ax[i] + ny * border.ay[i];
            if (nx * middleX + ny * middleY > offset) {
                nx = -nx;
                ny = -ny;
                offset = -offset;
            }
            double reach = nx * (nx > 0 ? box[2] : box[0]) + ny * (ny > 0 ? box[3] : box[1]);
            if (offset - reach > room) {
                room = offset - reach;
                set(c, nx > 0 ? 0 : nx, ny > 0 ? 0 : ny, nx > 0 ? nx : 0, ny > 0 ? ny : 0, offset);
            }
            if (room > 0) {
                count++;
            }
        }
    }

    private static void set(double[] c, double left, double top, double right, double bottom, double bound) {
        c[0] = left;
        c[1] = top;
        c[2] = right;
        c[3] = bottom;
        c[4] = bound;
    }

    private double[] climb(double[] start) {
        double[] z = start.clone();
        for (double weight = 1; weight > 1e-9; weight *= 0.2) {
            for (int step = 0; step < 12 && newtonStep(z, weight); step++) {
                continue;
            }
        }
        return z;
    }

    /** One damped step; false when there is nothing left to gain. */
    private boolean newtonStep(double[] z, double weight) {
        double[] gradient = new double[4];
        double[][] hessian = new double[4][4];
        double width = z[2] - z[0];
        double height = z[3] - z[1];
        side(gradient, hessian, 0, 2, width);
        side(gradient, hessian, 1, 3, height);
        for (int i = 0; i < count; i++) {
            double[] c = conditions[i];
            double room = c[4] - c[0] * z[0] - c[1] * z[1] - c[2] * z[2] - c[3] * z[3];
            double pull = weight / room;
            double stiff = pull / room;
            for (int a = 0; a < 4; a++) {
                if (c[a] != 0) {
                    gradient[a] -= pull * c[a];
                    for (int b = 0; b < 4; b++) {
                        hessian[a][b] += stiff * c[a] * c[b];
                    }
                }
            }
        }
        double[] step = solve(hessian, gradient);
        double gain = 0;
        for (int a = 0; a < 4; a++) {
            gain += step[a] * gradient[a];
        }
        if (!(gain > 1e-12)) {
            return false;
        }
        double here = height(z, weight);
        for (double scale = 1; scale > 1e-8; scale /= 2) {
            double[] next = {
                z[0] + scale * step[0], z[1] + scale * step[1], z[2] + scale * step[2], z[3] + scale * step[3]
            };
            if (height(next, weight) >= here + 0.01 * scale * gain) {
                System.arraycopy(next, 0, z, 0, 4);
                return gain > 1e-10;
            }
        }
        return false;
    }

    private static void side(double[] gradient, double[][] hessian, int low, int high, double extent) {
        gradient[low] -= 1 / extent;
        gradient[high] += 1 / extent;
        double stiff = 1 / (extent * extent);
        hessian[low][low] += stiff;
        hessian[high][high] += stiff;
        hessian[low][high] -= stiff;
        hessian[high][low] -= stiff;
    }

    /** The barrier function; minus infinity outside. */
    private double height(double[] z, double weight) {
        if (z[2] <= z[0] || z[3] <= z[1]) {
            return Double.NEGATIVE_INFINITY;
        }
        double sum = 0;
        double product = 1;
        for (int i = 0; i < count; i++) {
            double[] c = conditions[i];
            double room = c[4] - c[0] * z[0] - c[1] * z[1] - c[2] * z[2] - c[3] * z[3];
            if (room <= 0) {
                return Double.NEGATIVE_INFINITY;
            }
            product *= room;
            if (product > 1e200 || product < 1e-200) {
                sum += Math.log(product);
                product = 1;
            }
        }
        return Math.log((z[2] - z[0]) * (z[3] - z[1])) + weight * (sum + Math.log(product));
    }

    /** Solves the symmetric positive 4 × 4 system by Cholesky, a trace of the unit matrix added for safety. */
    private static double[] solve(double[][] m, double[] right) {
        double[][] l = new double[4][4];
        double trace = m[0][0] + m[1][1] + m[2][2] + m[3][3];
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = m[i][j] + (i == j ? 1e-14 * trace : 0);
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                l[i][j] = i == j ? Math.sqrt(Math.max(sum, 1e-300)) : sum / l[j][j];
            }
        }
        double[] x = right.clone();
        for (int i = 0; i < 4; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= l[i][k] * x[k];
            }
            x[i] /= l[i][i];
        }
        for (int i = 3; i >= 0; i--) {
            for (int k = i + 1; k < 4; k++) {
                x[i] -= l[k][i] * x[k];
            }
            x[i] /= l[i][i];
        }
        return x;
    }
}
