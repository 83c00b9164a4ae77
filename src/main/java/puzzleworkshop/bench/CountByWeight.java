package puzzleworkshop.bench;

import java.util.Optional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.PieceSizes;

/**
 * Counting pieces on a scale: what all pieces of a puzzle should weigh together, by how much the true weight may differ
 * from it, and whether one missing piece would show at all.
 *
 * <p>The wood of a piece is its own area less half a kerf along its own outline, times thickness and density at 12 %
 * moisture (Wood Handbook, FPL-GTR-282, ch. 4); print, film and adhesive are an area mass. Errors are taken as independent,
 * each by its standard deviation, and twice their root sum of squares is shown: about 19 of 20 puzzles lie within it.
 * <ul>
 * <li>Without a weighed blank: one species' density from board to board 10 % (Wood Handbook, ch. 5; from memory), the
 * thickness of a board 0.1 mm (common practice).
 * <li>With the blank weighed before the cut, with its print on and no masking tape: what the puzzle's part of the blank differs
 * from the whole blank 2 % of the share that is not puzzle, the facing 15 %, the blank's sides 0.5 mm, the scale half a
 * step at both weighings (all common practice).
 * <li>Either way the kerf 0.03 mm (common practice).
 * </ul>
 *
 * @param grams of all pieces together
 * @param lightestGrams of the lightest piece: the one whose absence shows least
 * @param scatterGrams to either side
 * @param pieces how many
 */
public record CountByWeight(double grams, double lightestGrams, double scatterGrams, int pieces) {

    /** Sticker paper with its adhesive and film, common practice. */
    private static final double FACING_GRAMS_PER_MM2 = 200e-6;

    private static final double DENSITY_SCATTER = 0.10;
    private static final double THICKNESS_SCATTER_MM = 0.1;
    private static final double WITHIN_BLANK_SCATTER = 0.02;
    private static final double FACING_SCATTER = 0.15;
    private static final double SIDE_SCATTER_MM = 0.5;
    private static final double KERF_SCATTER_MM = 0.03;
    private static final double WITHIN = 2;

    /**
     * A blank on the scale before the cut.
     *
     * @param grams with its print, without masking tape
     * @param stepGrams the smallest step that the scale shows
     * @param blank its size
     * @param sticker the size of the print on it
     */
    public record Weighed(double grams, double stepGrams, Size blank, Size sticker) {

        public Weighed {
            if (!(grams > 0) || !(stepGrams > 0)) {
                throw new IllegalArgumentException("A blank of " + grams + " g on a scale in steps of " + stepGrams);
            }
        }
    }

    /**
     * @param densityKgM3 at 12 % moisture; counts only where the blank was not weighed
     * @param weighed the blank before the cut, where it was weighed
     */
    public static CountByWeight of(PieceSizes sizes, Length thickness, double densityKgM3, Optional<Weighed> weighed) {
        double area = sizes.areaMm2();
        double wood = weighed.map(CountByWeight::woodPerMm2).orElse(thickness.mm() * densityKgM3 * 1e-6);
        double each = wood + FACING_GRAMS_PER_MM2;
        double byKerf = sizes.aroundMm() * KERF_SCATTER_MM / 2 * each;
        double others = weighed.map(on -> scatterOfWeighed(on, area, wood))
                .orElseGet(() -> area * wood * root(DENSITY_SCATTER, THICKNESS_SCATTER_MM / thickness.mm()));
        return new CountByWeight(
                area * each, sizes.smallestMm2() * each, WITHIN * root(byKerf, others), sizes.pieces());
    }

    /** Grams of a square millimetre of bare board. */
    private static double woodPerMm2(Weighed on) {
        double facing = on.sticker().area().mm2() * FACING_GRAMS_PER_MM2;
        return Math.max(0, on.grams() - facing) / on.blank().area().mm2();
    }

    private static double scatterOfWeighed(Weighed on, double area, double wood) {
        double blank = on.blank().area().mm2();
        double share = Math.min(1, area / blank);
        double within = area * wood * WITHIN_BLANK_SCATTER * (1 - share);
        double facing = area
                * FACING_GRAMS_PER_MM2
                * FACING_SCATTER
                * Math.abs(1 - on.sticker().area().mm2() / blank);
        double sides = area
                * wood
                * root(
                        SIDE_SCATTER_MM / on.blank().width().mm(),
                        SIDE_SCATTER_MM / on.blank().height().mm());
        double scale = root(on.stepGrams() / 2 * share, on.stepGrams() / 2);
        return root(root(within, facing), root(sides, scale));
    }

    private static double root(double a, double b) {
        return Math.sqrt(a * a + b * b);
    }

    public double gramsAPiece() {
        return grams / pieces;
    }

    /** Whether one missing piece, even the lightest, stands out from the scatter. */
    public boolean showsOneMissing() {
        return lightestGrams > scatterGrams;
    }

    /** The fewest missing pieces that stand out. */
    public int fewestThatShow() {
        return (int) Math.floor(scatterGrams / lightestGrams) + 1;
    }
}
