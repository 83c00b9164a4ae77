package puzzleworkshop.pattern;

import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * The outer edge of a puzzle. It never leaves the finished size: rounding and waves only take wood away.
 *
 * @param kind which edge
 * @param measure radius of rounded corners, depth of the waves; zero for square corners
 */
public record PuzzleEdge(Kind kind, Length measure) {

    /** The edges that can be had. */
    public enum Kind {
        SQUARE,
        ROUNDED,
        WAVY,
        /** An oval as wide and high as the finished size; a circle where it is square. */
        ROUND,
        /** A heart as wide and high as the finished size. */
        HEART
    }

    /** Part of the finished size that a heart covers; measured on its outline. */
    private static final double HEARTS_SHARE = 0.687;

    public PuzzleEdge {
        boolean none = kind == Kind.SQUARE || kind == Kind.ROUND || kind == Kind.HEART;
        if (none ? measure.mm() != 0 : !measure.isPositive()) {
            throw new IllegalArgumentException("Measure " + measure.mm() + " mm does not go with " + kind);
        }
    }

    public static PuzzleEdge square() {
        return new PuzzleEdge(Kind.SQUARE, Length.ZERO);
    }

    public static PuzzleEdge rounded(Length radius) {
        return radius.isPositive() ? new PuzzleEdge(Kind.ROUNDED, radius) : square();
    }

    /** As deep as it is usually made (common practice): corners of 8 mm, waves of 2.5 mm. */
    public static PuzzleEdge usual(Kind kind) {
        return switch (kind) {
            case SQUARE -> square();
            case ROUNDED -> rounded(Length.mm(8));
            case WAVY -> wavy(Length.mm(2.5));
            case ROUND, HEART -> new PuzzleEdge(kind, Length.ZERO);
        };
    }

    public static PuzzleEdge wavy(Length depth) {
        return new PuzzleEdge(Kind.WAVY, depth);
    }

    /** Whether it is a closed curve of its own instead of four sides. */
    public boolean isCurved() {
        return kind == Kind.ROUND || kind == Kind.HEART;
    }

    /** Part of the finished size that remains inside it. */
    public double share() {
        return switch (kind) {
            case SQUARE, ROUNDED, WAVY -> 1;
            case ROUND -> Math.PI / 4;
            case HEART -> HEARTS_SHARE;
        };
    }

    /**
     * The curve itself, closed, in millimetres from the top left corner of the finished size.
     *
     * @throws IllegalStateException when it is four sides
     */
    public CurvePath curve(Size finished) {
        double width = finished.width().mm();
        double height = finished.height().mm();
        return switch (kind) {
            case ROUND -> KeptWhole.oval(Point.of(width / 2, height / 2), width / 2, height / 2);
            case HEART -> PersonalShapes.heartOutline(width, height);
            default -> throw new IllegalStateException("An edge of four sides: " + kind);
        };
    }
}
