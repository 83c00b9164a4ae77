package puzzleworkshop.pattern;

import java.util.List;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * A place on the picture that no line may cut, a face for instance: an upright oval.
 *
 * @param middle in millimetres from the top left corner of the puzzle
 * @param halfWidthMm above zero
 * @param halfHeightMm above zero
 */
public record KeptWhole(Point middle, double halfWidthMm, double halfHeightMm) {

    /** A face is a little higher than wide. */
    public static final double HIGHER = 1.3;

    /** Handle of a quarter circle, 4/3·(√2 − 1). */
    private static final double QUARTER = 4.0 / 3 * (Math.sqrt(2) - 1);

    public KeptWhole {
        if (!(halfWidthMm > 0) || !(halfHeightMm > 0)) {
            throw new IllegalArgumentException(
                    "A place of " + halfWidthMm + " by " + halfHeightMm + " mm cannot be kept whole");
        }
    }

    /** A place as high as a face of this width. */
    public static KeptWhole face(Point middle, Length width) {
        return new KeptWhole(middle, width.mm() / 2, HIGHER * width.mm() / 2);
    }

    /** Whether none of it reaches beyond the puzzle. */
    public boolean liesOn(Size puzzle) {
        return new Bounds(0, 0, puzzle.width().mm(), puzzle.height().mm())
                .holds(outline().bounds());
    }

    /** The oval, closed. */
    public CurvePath outline() {
        return oval(middle, halfWidthMm, halfHeightMm);
    }

    static CurvePath oval(Point middle, double a, double b) {
        double x = middle.xMm();
        double y = middle.yMm();
        double ka = a * QUARTER;
        double kb = b * QUARTER;
        Point top = Point.of(x, y - b);
        return new CurvePath(
                top,
                List.of(
                        new Segment.Cubic(Point.of(x + ka, y - b), Point.of(x + a, y - kb), Point.of(x + a, y)),
                        new Segment.Cubic(Point.of(x + a, y + kb), Point.of(x + ka, y + b), Point.of(x, y + b)),
                        new Segment.Cubic(Point.of(x - ka, y + b), Point.of(x - a, y + kb), Point.of(x - a, y)),
                        new Segment.Cubic(Point.of(x - a, y - kb), Point.of(x - ka, y - b), top)),
                true);
    }
}
