package puzzleworkshop.cutting.settings;

/**
 * How sure so many good cuts make us of the next: the share of good cuts that is reached at least, at a one-sided
 * confidence of 95 %.
 *
 * <p>Method: C. J. Clopper and E. S. Pearson, The Use of Confidence or Fiducial Limits Illustrated in the Case of the
 * Binomial, Biometrika 26 (1934): the share at which as many good ones or more would come up in one of twenty times.
 * Exact (never too sure); found by halving, to 10⁻⁹.
 *
 * @param good cuts that were good
 * @param cuts made in all
 */
public record SuccessBound(int good, int cuts) {

    private static final double DOUBT = 0.05;

    public SuccessBound {
        if (good < 0 || cuts < good) {
            throw new IllegalArgumentException(good + " good of " + cuts);
        }
    }

    /** Between 0 and 1; 0 before the first good cut. */
    public double atLeast() {
        if (good == 0) {
            return 0;
        }
        double low = 0;
        double high = 1;
        while (high - low > 1e-9) {
            double middle = (low + high) / 2;
            if (chance(middle) < DOUBT) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /**
     * That as many are good, or more, when each is good with this probability. The terms are summed as parts of their
     * largest, whose logarithm is known: a term alone may be too small for a number long before the sum is.
     */
    private double chance(double share) {
        double odds = Math.log(share) - Math.log1p(-share);
        double[] terms = new double[cuts + 1];
        terms[0] = cuts * Math.log1p(-share);
        double largest = terms[0];
        for (int k = 0; k < cuts; k++) {
            terms[k + 1] = terms[k] + Math.log((double) (cuts - k) / (k + 1)) + odds;
            largest = Math.max(largest, terms[k + 1]);
        }
        double sum = 0;
        for (int k = good; k <= cuts; k++) {
            sum += Math.exp(terms[k] - largest);
        }
        return sum * Math.exp(largest);
    }
}
