package puzzleworkshop.geometry.align;

/**
 * How far from where they usually come nearly all further ones will be, when errors are normal: so many standard deviations
 * of those measured.
 *
 * <p>Method: W. G. Howe, Two-sided tolerance limits for normal populations, some improvements, Journal of the American
 * Statistical Association 64 (1969): z·√(ν·(1 + 1/m)/χ²), with χ² from E. B. Wilson and M. M. Hilferty, The distribution of
 * chi-square, Proceedings of the National Academy of Sciences 17 (1931), within 0.2 % from 15 degrees of freedom on.
 */
public final class NormalTolerance {

    /** Two-sided, 99.9 % (any table of the normal distribution). */
    public static final double COVERS_999 = 3.290527;
    /** One-sided, 95 %. */
    public static final double CONFIDENT_95 = 1.644854;

    private NormalTolerance() {}

    /**
     * @param freedom degrees of freedom of the standard deviation, from 2
     * @param averaged how many the usual place is the mean of
     * @param covers two-sided normal quantile of the share of all further ones that is to lie within
     * @param confident one-sided normal quantile of the confidence
     */
    public static double factor(int freedom, int averaged, double covers, double confident) {
        if (freedom < 2 || averaged < 1) {
            throw new IllegalArgumentException(
                    "Too few were measured: " + freedom + " degrees of freedom, " + averaged);
        }
        double part = 2.0 / (9 * freedom);
        double chiSquare = freedom * Math.pow(1 - part - confident * Math.sqrt(part), 3);
        return covers * Math.sqrt(freedom * (1 + 1.0 / averaged) / chiSquare);
    }
}
