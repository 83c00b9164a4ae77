package puzzleworkshop.camera.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * The view that explains all corners best, whichever of a phone's lenses took the photo, and how sure that is. A photo of a plane
 * from straight above fits every lens; there the usual one counts, and what the others would say goes into the doubt.
 */
final class LikeliestView {

    /** Neighbouring corners err together, so they say less than as many that err each by itself: their weight in the logarithm. */
    private static final double TOGETHER = 0.5;

    final ViewFit fit;
    private final List<ViewFit> others = new ArrayList<>();
    /** How likely each of the others is. */
    private final double[] share;

    /** @param fits one for each guess, not yet fitted */
    LikeliestView(List<LensGuess> guesses, Function<LensGuess, ViewFit> fits) {
        List<ViewFit> all = guesses.stream().map(fits).toList();
        all.forEach(ViewFit::fit);
        double deviation = all.stream().mapToDouble(f -> f.sigma).min().orElseThrow();
        double[] against = new double[all.size()];
        int best = 0;
        for (int k = 0; k < against.length; k++) {
            against[k] = TOGETHER * all.get(k).disagreement(deviation)
                    + guesses.get(k).seldom();
            best = against[k] < against[best] ? k : best;
        }
        fit = all.get(best);
        share = new double[against.length - 1];
        double sum = 1;
        for (int k = 0; k < against.length; k++) {
            if (k != best) {
                share[others.size()] = Math.exp((against[best] - against[k]) / 2);
                sum += share[others.size()];
                others.add(all.get(k));
            }
        }
        for (int k = 0; k < share.length; k++) {
            share[k] /= sum;
        }
    }

    /** Standard deviation in mm of the point seen at a place, at height z. */
    double doubt(double u, double v, double z) {
        double[] here = new double[2];
        double[] there = new double[2];
        fit.view(fit.best).onPlane(u, v, z, here);
        double variance = variance(u, v, z);
        for (int k = 0; k < others.size(); k++) {
            others.get(k).view(others.get(k).best).onPlane(u, v, z, there);
            variance += share[k] * (Math.pow(here[0] - there[0], 2) + Math.pow(here[1] - there[1], 2)) / 2;
        }
        return Math.sqrt(variance);
    }

    /** Of all parameters of the likeliest fit together. */
    private double variance(double u, double v, double z) {
        if (fit.covariance == null) {
            return Double.POSITIVE_INFINITY;
        }
        int n = ViewFit.FIRST_CARD;
        double[] gx = new double[n];
        double[] gy = new double[n];
        double[] out = new double[2];
        for (int a = 0; a < n; a++) {
            double h = ViewFit.step(fit.best, a);
            double[] p = fit.best.clone();
            p[a] += h;
            fit.view(p).onPlane(u, v, z, out);
            gx[a] = out[0];
            gy[a] = out[1];
            p[a] -= 2 * h;
            fit.view(p).onPlane(u, v, z, out);
            gx[a] = (gx[a] - out[0]) / (2 * h);
            gy[a] = (gy[a] - out[1]) / (2 * h);
        }
        double variance = 0;
        for (int a = 0; a < n; a++) {
            for (int b = 0; b < n; b++) {
                variance += fit.covariance.get(a, b) * (gx[a] * gx[b] + gy[a] * gy[b]) / 2;
            }
        }
        return Math.max(0, variance);
    }
}
