package puzzleworkshop.geometry.align;

import java.util.List;
import java.util.Optional;

/**
 * The overhang that a workshop really needs, learned from where its prints were found to lie.
 *
 * <p>Method: S. S. Wilks, Determination of sample sizes for setting tolerance limits, Annals of Mathematical Statistics
 * 12 (1941). Whatever the distribution, the largest of n needs covers a share q of all further ones with the confidence
 * 1 − qⁿ; so with 95 % confidence it covers q = 0.05^(1/n): 86.1 % after 20 cuts, 95.0 % after 59, 99.0 % after 299.
 *
 * @param cuts how many were measured
 * @param largest the largest need among them, mm a side
 * @param covered share of all further cuts that this covers, with 95 % confidence
 */
public record NeededOverhang(int cuts, double largest, double covered) {

    /** Below this nothing is proposed. */
    public static final int FEWEST = 20;

    private static final double DOUBT = 0.05;

    /** @param needs for each measured cut, the overhang that would just have done, mm; the newest last */
    public static Optional<NeededOverhang> of(List<Double> needs) {
        if (needs.size() < FEWEST) {
            return Optional.empty();
        }
        double largest = needs.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
        return Optional.of(new NeededOverhang(needs.size(), largest, Math.pow(DOUBT, 1.0 / needs.size())));
    }
}
