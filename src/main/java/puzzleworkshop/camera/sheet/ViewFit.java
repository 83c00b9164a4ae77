package puzzleworkshop.camera.sheet;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import puzzleworkshop.camera.model.Lens;
import puzzleworkshop.camera.model.View;

/**
 * Lens, focal length, viewpoint and the places of loose cards that explain all corners seen best: Levenberg and Marquardt's method
 * on the distances in the photo, with what is known of phones' lenses beforehand as soft bounds (one photo of one plane from
 * straight above says nothing of the focal length).
 */
final class ViewFit {

    private static final int LENS = 7;
    static final int FIRST_CARD = 13;
    private static final int MOST_STEPS = 40;

    /** A corner farther off than this, in deviations, says no more against a lens than one that is as far. */
    private static final double FARTHEST_COUNTED = 3;

    private final double[] known;
    private final double[] seen;
    private final int[] card;
    private final int cards;
    private final int width;
    private final int height;
    private final double[] before;
    private final double[] scatter;
    private double[] base;
    double[] best;
    double[] weight;
    double sigma;
    DMatrixRMaj covariance;

    /**
     * @param known x, y of each corner on its own card
     * @param seen u, v of each in the photo
     * @param card index of each corner's card
     * @param guess what is known of the lens beforehand
     */
    ViewFit(double[] known, double[] seen, int[] card, int cards, int width, int height, LensGuess guess) {
        this.known = known;
        this.seen = seen;
        this.card = card;
        this.cards = cards;
        this.width = width;
        this.height = height;
        int n = FIRST_CARD + 3 * (cards - 1);
        double longer = Math.max(width, height);
        this.before = new double[n];
        this.scatter = new double[n];
        java.util.Arrays.fill(scatter, Double.POSITIVE_INFINITY);
        before[0] = Math.log(guess.focal() * longer);
        System.arraycopy(
                new double[] {guess.scatter(), 0.008 * longer, 0.008 * longer, 0.15, 0.15, 0.003, 0.003},
                0,
                scatter,
                0,
                LENS);
        this.weight = new double[seen.length / 2];
        java.util.Arrays.fill(weight, 1);
    }

    void fit() {
        start();
        sigma = 1;
        for (int round = 0; round < 4; round++) {
            solve();
            reweigh();
        }
        covariance();
    }

    private void start() {
        best = before.clone();
        double focal = Math.exp(before[0]);
        double[][] shifts = new double[cards][];
        double[][] turns = new double[cards][];
        for (int c = 0; c < cards; c++) {
            double[] pose = FirstPose.of(known, seen, card, c, focal, width, height);
            turns[c] = java.util.Arrays.copyOf(pose, 9);
            shifts[c] = java.util.Arrays.copyOfRange(pose, 9, 12);
        }
        base = turns[0];
        System.arraycopy(shifts[0], 0, best, 10, 3);
        for (int c = 1; c < cards; c++) {
            // the card's origin and its x axis, seen from the first card
            double[] d = {shifts[c][0] - shifts[0][0], shifts[c][1] - shifts[0][1], shifts[c][2] - shifts[0][2]};
            double[] r = turns[0];
            int at = FIRST_CARD + 3 * (c - 1);
            best[at] = r[0] * d[0] + r[3] * d[1] + r[6] * d[2];
            best[at + 1] = r[1] * d[0] + r[4] * d[1] + r[7] * d[2];
            double[] q = turns[c];
            double ax = r[0] * q[0] + r[3] * q[3] + r[6] * q[6];
            double ay = r[1] * q[0] + r[4] * q[3] + r[7] * q[6];
            best[at + 2] = Math.atan2(ay, ax);
        }
    }

    View view(double[] p) {
        return new View(
                Math.exp(p[0]),
                width / 2.0 + p[1],
                height / 2.0 + p[2],
                new Lens(p[3], p[4], p[5], p[6]),
                View.times(base, View.rotation(p[7], p[8], p[9])),
                new double[] {p[10], p[11], p[12]});
    }

    SeenSheet.Card place(double[] p, int index, int part) {
        int at = FIRST_CARD + 3 * (index - 1);
        return index == 0 ? new SeenSheet.Card(part, 0, 0, 0) : new SeenSheet.Card(part, p[at], p[at + 1], p[at + 2]);
    }

    private double[] residuals(double[] p) {
        View view = view(p);
        SeenSheet.Card[] places = new SeenSheet.Card[cards];
        for (int c = 0; c < cards; c++) {
            places[c] = place(p, c, c);
        }
        double[] r = new double[seen.length + LENS];
        double[] uv = new double[2];
        for (int i = 0; i < card.length; i++) {
            SeenSheet.Card on = places[card[i]];
            double x = known[2 * i];
            double y = known[2 * i + 1];
            boolean before = view.project(on.toX(x, y), on.toY(x, y), 0, uv);
            double w = Math.sqrt(weight[i]) / sigma;
            r[2 * i] = before ? (uv[0] - seen[2 * i]) * w : 1e4;
            r[2 * i + 1] = before ? (uv[1] - seen[2 * i + 1]) * w : 1e4;
        }
        for (int i = 0; i < LENS; i++) {
            r[seen.length + i] = (p[i] - before[i]) / scatter[i];
        }
        return r;
    }

    private void solve() {
        int n = best.length;
        double damping = 1e-3;
        double[] r = residuals(best);
        double cost = square(r);
        for (int step = 0; step < MOST_STEPS; step++) {
            double[][] slopes = slopes(best, r.length);
            DMatrixRMaj normal = new DMatrixRMaj(n, n);
            DMatrixRMaj right = new DMatrixRMaj(n, 1);
            for (int a = 0; a < n; a++) {
                for (int b = a; b < n; b++) {
                    double sum = 0;
                    for (int i = 0; i < r.length; i++) {
                        sum += slopes[a][i] * slopes[b][i];
                    }
                    normal.set(a, b, sum);
                    normal.set(b, a, sum);
                }
                double sum = 0;
                for (int i = 0; i < r.length; i++) {
                    sum += slopes[a][i] * r[i];
                }
                right.set(a, 0, -sum);
            }
            boolean better = false;
            double gain = 0;
            while (!better && damping < 1e9) {
                DMatrixRMaj damped = normal.copy();
                for (int a = 0; a < n; a++) {
                    damped.add(a, a, damping * (normal.get(a, a) + 1e-12));
                }
                DMatrixRMaj move = new DMatrixRMaj(n, 1);
                if (CommonOps_DDRM.solve(damped, right, move)) {
                    double[] next = best.clone();
                    for (int a = 0; a < n; a++) {
                        next[a] += move.get(a, 0);
                    }
                    double[] nextResiduals = residuals(next);
                    double nextCost = square(nextResiduals);
                    if (nextCost < cost) {
                        gain = cost - nextCost;
                        best = rebased(next);
                        r = nextResiduals;
                        cost = nextCost;
                        damping = Math.max(1e-9, damping / 8);
                        better = true;
                        continue;
                    }
                }
                damping *= 6;
            }
            if (!better || gain < 1e-6 * cost) {
                return;
            }
        }
    }

    /** The same view with its small turn taken into the base, where the formula is always smooth. */
    private double[] rebased(double[] p) {
        base = View.times(base, View.rotation(p[7], p[8], p[9]));
        p[7] = 0;
        p[8] = 0;
        p[9] = 0;
        return p;
    }

    private double[][] slopes(double[] p, int count) {
        double[][] slopes = new double[p.length][];
        for (int a = 0; a < p.length; a++) {
            double h = step(p, a);
            double[] up = p.clone();
            double[] down = p.clone();
            up[a] += h;
            down[a] -= h;
            double[] high = residuals(up);
            double[] low = residuals(down);
            double[] slope = new double[count];
            for (int i = 0; i < count; i++) {
                slope[i] = (high[i] - low[i]) / (2 * h);
            }
            slopes[a] = slope;
        }
        return slopes;
    }

    static double step(double[] p, int a) {
        return a == 1 || a == 2 ? 0.05 : a >= 10 ? 1e-3 : 1e-5;
    }

    private static double square(double[] r) {
        double sum = 0;
        for (double x : r) {
            sum += x * x;
        }
        return sum;
    }

    /** Corners far from where the others expect them count little (a corner half covered, a curled edge). */
    private void reweigh() {
        double[] far = distances();
        double[] sorted = far.clone();
        java.util.Arrays.sort(sorted);
        // the median of a Rayleigh distribution is 1.1774 of the deviation in one direction
        sigma = Math.max(0.03, sorted[sorted.length / 2] / 1.1774);
        for (int i = 0; i < far.length; i++) {
            double d = far[i] / (4 * sigma);
            weight[i] = d < 1 ? 1 - d * d * 0.5 : 0.5 / (d * d * d * d);
        }
    }

    double[] distances() {
        double[] kept = weight;
        double keptSigma = sigma;
        weight = new double[kept.length];
        java.util.Arrays.fill(weight, 1);
        sigma = 1;
        double[] r = residuals(best);
        weight = kept;
        sigma = keptSigma;
        double[] far = new double[card.length];
        for (int i = 0; i < far.length; i++) {
            far[i] = Math.hypot(r[2 * i], r[2 * i + 1]);
        }
        return far;
    }

    /**
     * How badly the corners and what was known beforehand agree, as twice a negative logarithm of likelihood.
     *
     * @param deviation of a corner in one direction, pixels
     */
    double disagreement(double deviation) {
        double sum = 0;
        for (double d : distances()) {
            sum += Math.pow(Math.min(d / deviation, FARTHEST_COUNTED), 2);
        }
        for (int i = 0; i < LENS; i++) {
            sum += Math.pow((best[i] - before[i]) / scatter[i], 2);
        }
        return sum;
    }

    private void covariance() {
        int n = best.length;
        double[][] slopes = slopes(best, seen.length + LENS);
        DMatrixRMaj normal = new DMatrixRMaj(n, n);
        for (int a = 0; a < n; a++) {
            for (int b = 0; b < n; b++) {
                double sum = 0;
                for (int i = 0; i < slopes[a].length; i++) {
                    sum += slopes[a][i] * slopes[b][i];
                }
                normal.set(a, b, sum);
            }
        }
        covariance = new DMatrixRMaj(n, n);
        if (!CommonOps_DDRM.invert(normal, covariance)) {
            covariance = null;
        }
    }
}
