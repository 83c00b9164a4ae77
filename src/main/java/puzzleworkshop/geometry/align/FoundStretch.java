package puzzleworkshop.geometry.align;

import java.util.List;
import puzzleworkshop.geometry.Point;

/**
 * By how much a print was found longer or shorter than drawn, and how surely. The stretch is a of {@link SimilarityFit} along
 * the turn, so readings that are off by a standard deviation σ along each axis leave it σ/√S off, S = Σ |p|² of the marks
 * about their middle (linear regression, any textbook of it).
 *
 * @param share 0 is as drawn
 * @param within in 95 of 100 measurings the true share is no further from it than this
 */
public record FoundStretch(double share, double within) {

    /** Two-sided, 95 % (any table of the normal distribution). */
    private static final double SURE_95 = 1.959964;

    /**
     * @param drawn the marks that were visited, two different ones at least
     * @param reading standard deviation of a reading along an axis, mm
     */
    public static FoundStretch of(Similarity place, List<Point> drawn, double reading) {
        Point middle = SimilarityFit.middle(drawn);
        double spread = drawn.stream()
                .mapToDouble(mark -> mark.distanceTo(middle))
                .map(away -> away * away)
                .sum();
        return new FoundStretch(place.stretch() - 1, SURE_95 * reading / Math.sqrt(spread));
    }

    /** Whether reading errors alone would seldom make it. */
    public boolean told() {
        return Math.abs(share) > within;
    }
}
