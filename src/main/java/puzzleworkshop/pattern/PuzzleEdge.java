package puzzleworkshop.pattern;

import puzzleworkshop.measure.Length;

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
        WAVY
    }

    public PuzzleEdge {
        boolean square = kind == Kind.SQUARE;
        if (square ? measure.mm() != 0 : !measure.isPositive()) {
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
        };
    }

    public static PuzzleEdge wavy(Length depth) {
        return new PuzzleEdge(Kind.WAVY, depth);
    }
}
