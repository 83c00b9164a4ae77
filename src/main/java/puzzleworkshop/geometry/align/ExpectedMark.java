package puzzleworkshop.geometry.align;

import java.util.OptionalDouble;
import puzzleworkshop.geometry.Point;

/**
 * Where a mark that was not visited yet is to be looked for.
 *
 * @param at on the bed, mm
 * @param within that far from it at most, mm, as often as what it was calculated from holds; none where that is not known
 */
public record ExpectedMark(Point at, OptionalDouble within) {

    /** From where prints usually lie: the shift along either axis and the turn about the print's middle taken the worst way. */
    public static ExpectedMark usually(Similarity usual, Point middle, Point mark, double shift, double turn) {
        return new ExpectedMark(
                usual.of(mark), OptionalDouble.of(Math.hypot(shift, shift) + turned(middle.distanceTo(mark), turn)));
    }

    /**
     * From one mark that was visited: the others lie round it, turned as prints usually are.
     *
     * @param turn usual one, radians
     * @param within how far off it may be; none where that was not learned
     * @param off by how much the reading of the first may be off, mm
     */
    public static ExpectedMark round(
            Point drawn, Point seen, Point mark, double turn, OptionalDouble within, double off) {
        Similarity about = Similarity.about(new Point(0, 0), 1, turn, 0, 0);
        Point way = about.of(new Point(mark.xMm() - drawn.xMm(), mark.yMm() - drawn.yMm()));
        return new ExpectedMark(
                seen.plus(way.xMm(), way.yMm()),
                within.isEmpty()
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(off + turned(drawn.distanceTo(mark), within.getAsDouble())));
    }

    /** From two or more that fit each other. */
    public static ExpectedMark fitted(SimilarityFit fit, Point mark, double reading, double probability) {
        return new ExpectedMark(fit.place().of(mark), OptionalDouble.of(fit.radiusAt(mark, reading, probability)));
    }

    /** The chord of a turn. */
    private static double turned(double away, double turn) {
        return 2 * away * Math.sin(Math.min(Math.abs(turn), Math.PI) / 2);
    }
}
