package puzzleworkshop.offers;

import java.util.List;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.pattern.PuzzleEdge;

/**
 * The puzzle itself as it is wished for.
 *
 * @param pieces how many are wanted; the nearest number with well-shaped pieces is made
 * @param seed chooses the variation of the cut lines
 * @param shapes personal pieces among the others; usually none
 * @param design which way of drawing; an order that is changed keeps the one it was made with
 * @param layout in what its pieces differ from a plain grid
 */
public record PuzzleWish(
        Size finished,
        int pieces,
        CutStyle style,
        PuzzleEdge outline,
        long seed,
        IntendedAge age,
        boolean tray,
        List<PersonalShape> shapes,
        int design,
        PieceLayout layout) {

    public PuzzleWish {
        shapes = List.copyOf(shapes);
    }

    /** A plain grid without personal pieces, by the newest way of drawing. */
    public static PuzzleWish plain(
            Size finished, int pieces, CutStyle style, PuzzleEdge outline, long seed, IntendedAge age, boolean tray) {
        return new PuzzleWish(
                finished, pieces, style, outline, seed, age, tray, List.of(), PatternSpec.DESIGN, PieceLayout.PLAIN);
    }

    public PuzzleWish withShapes(List<PersonalShape> other) {
        return new PuzzleWish(finished, pieces, style, outline, seed, age, tray, other, design, layout);
    }

    /** The same by another way of drawing. */
    public PuzzleWish drawnBy(int other) {
        return new PuzzleWish(finished, pieces, style, outline, seed, age, tray, shapes, other, layout);
    }

    public PuzzleWish sized(Size other) {
        return new PuzzleWish(other, pieces, style, outline, seed, age, tray, shapes, design, layout);
    }
}
