package puzzleworkshop.bench;

import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;

/**
 * Counting pieces on a scale: what all pieces of a puzzle should weigh together, by how much the true weight may differ
 * from it, and whether one missing piece would show at all.
 *
 * <p>Wood: the finished area less what the beam took, times thickness and density at 12 % moisture (Wood Handbook,
 * FPL-GTR-282, ch. 4). Print, film and adhesive: an area mass. The scatter is that of one species' density (10 %,
 * a coefficient of variation from memory of the Wood Handbook) and of the thickness of a board (0.1 mm, common
 * practice), as independent errors, twice over: about 19 of 20 boards lie within it.
 *
 * @param grams of all pieces together
 * @param gramsAPiece on average
 * @param scatterGrams to either side
 */
public record CountByWeight(double grams, double gramsAPiece, double scatterGrams) {

    /** Sticker paper with its adhesive and film, common practice. */
    private static final double FACING_GRAMS_PER_M2 = 200;

    private static final double DENSITY_SCATTER = 0.10;
    private static final double THICKNESS_SCATTER_MM = 0.1;
    private static final double WITHIN = 2;

    /**
     * @param finished area of the puzzle
     * @param innerLines length of all lines between pieces; half of the outline's kerf is outside
     * @param densityKgM3 at 12 % moisture
     */
    public static CountByWeight of(
            Area finished, Length innerLines, Length kerf, Length thickness, double densityKgM3, int pieces) {
        double left = Math.max(0, finished.mm2() - innerLines.mm() * kerf.mm());
        double wood = left * thickness.mm() * densityKgM3 * 1e-6;
        double facing = left * FACING_GRAMS_PER_M2 * 1e-6;
        double relative = Math.hypot(DENSITY_SCATTER, THICKNESS_SCATTER_MM / thickness.mm());
        double all = wood + facing;
        return new CountByWeight(all, all / pieces, WITHIN * relative * wood);
    }

    /** Whether one missing piece stands out from the scatter between boards. */
    public boolean showsOneMissing() {
        return gramsAPiece > scatterGrams;
    }

    /** The fewest missing pieces that stand out. */
    public int fewestThatShow() {
        return (int) Math.floor(scatterGrams / gramsAPiece) + 1;
    }
}
