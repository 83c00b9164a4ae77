package puzzleworkshop.pattern;

import java.util.List;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * Everything a pattern is made from. The same spec gives the same pattern, to the last digit, on any machine and in
 * any later version (the design number would change otherwise).
 *
 * @param size finished size of the puzzle
 * @param grid pieces across and down
 * @param seed chooses the variation; printed on the job ticket
 * @param style how pieces meet
 * @param outline outer edge
 * @param thickness of the board with its sticker; limits how thin a neck may be
 * @param kerf width of wood the beam takes away
 * @param shapes personal pieces placed whole among the others; usually none
 * @param design which way of drawing; kept with an order, so that it draws the same pattern in every later version
 * @param layout in what pieces differ from a plain grid
 */
public record PatternSpec(
        Size size,
        PieceGrid grid,
        long seed,
        CutStyle style,
        PuzzleEdge outline,
        Length thickness,
        Length kerf,
        List<PersonalShape> shapes,
        int design,
        PieceLayout layout) {

    /** The first way of drawing: edges that are alike are neither looked for nor avoided. */
    public static final int FIRST_DESIGN = 1;

    /**
     * The way of drawing for new orders; raised only when the same spec would draw something else than before. Design 2:
     * no two inner edges alike.
     */
    public static final int DESIGN = 2;

    public static final Length USUAL_THICKNESS = Length.mm(3);

    /** Common practice for a 20 W diode on 3 mm plywood. */
    public static final Length USUAL_KERF = Length.mm(0.15);

    public PatternSpec {
        if (!thickness.isPositive() || kerf.mm() < 0) {
            throw new IllegalArgumentException("Thickness " + thickness.mm() + " and kerf " + kerf.mm()
                    + " mm: the first must be above zero, the second not below");
        }
        if (design < FIRST_DESIGN || design > DESIGN) {
            throw new IllegalArgumentException("Design " + design + " of a pattern is not known here: 1 to " + DESIGN);
        }
        if (design == FIRST_DESIGN && (!layout.isPlain() || outline.isCurved())) {
            throw new IllegalArgumentException("The first design knows neither this layout nor this outer edge");
        }
        shapes = List.copyOf(shapes);
    }

    /** As a plain grid. */
    public PatternSpec(
            Size size,
            PieceGrid grid,
            long seed,
            CutStyle style,
            PuzzleEdge outline,
            Length thickness,
            Length kerf,
            List<PersonalShape> shapes,
            int design) {
        this(size, grid, seed, style, outline, thickness, kerf, shapes, design, PieceLayout.PLAIN);
    }

    /** By the newest way of drawing. */
    public PatternSpec(
            Size size,
            PieceGrid grid,
            long seed,
            CutStyle style,
            PuzzleEdge outline,
            Length thickness,
            Length kerf,
            List<PersonalShape> shapes) {
        this(size, grid, seed, style, outline, thickness, kerf, shapes, DESIGN);
    }

    /** Knobs, square corners, 3 mm board. */
    public static PatternSpec of(Size size, PieceGrid grid, long seed) {
        return new PatternSpec(
                size, grid, seed, CutStyle.KNOBS, PuzzleEdge.square(), USUAL_THICKNESS, USUAL_KERF, List.of());
    }

    public PatternSpec withSeed(long other) {
        return new PatternSpec(size, grid, other, style, outline, thickness, kerf, shapes, design, layout);
    }

    public PatternSpec withStyle(CutStyle other) {
        return new PatternSpec(size, grid, seed, other, outline, thickness, kerf, shapes, design, layout);
    }

    public PatternSpec withOutline(PuzzleEdge other) {
        int able = other.isCurved() ? Math.max(design, 2) : design;
        return new PatternSpec(size, grid, seed, style, other, thickness, kerf, shapes, able, layout);
    }

    public PatternSpec withThickness(Length other) {
        return new PatternSpec(size, grid, seed, style, outline, other, kerf, shapes, design, layout);
    }

    public PatternSpec withKerf(Length other) {
        return new PatternSpec(size, grid, seed, style, outline, thickness, other, shapes, design, layout);
    }

    public PatternSpec withShapes(List<PersonalShape> others) {
        return new PatternSpec(size, grid, seed, style, outline, thickness, kerf, others, design, layout);
    }

    public PatternSpec withDesign(int other) {
        return new PatternSpec(size, grid, seed, style, outline, thickness, kerf, shapes, other, layout);
    }

    /** In another layout; by the newest way of drawing where the first does not know it. */
    public PatternSpec withLayout(PieceLayout other) {
        int able = other.isPlain() && !outline.isCurved() ? design : Math.max(design, 2);
        return new PatternSpec(size, grid, seed, style, outline, thickness, kerf, shapes, able, other);
    }

    /** Whether as many pieces come out as the grid has: nothing in it swallows or adds any. */
    public boolean countsAsGrid() {
        return shapes.isEmpty() && layout.keptWhole().isEmpty() && !outline.isCurved();
    }

    /**
     * As before there were layouts where it is plain: what customers approved is known by a digest of this text.
     */
    @Override
    public String toString() {
        String plain = "PatternSpec[size=" + size + ", grid=" + grid + ", seed=" + seed + ", style=" + style
                + ", outline=" + outline + ", thickness=" + thickness + ", kerf=" + kerf + ", shapes=" + shapes
                + ", design=" + design;
        return plain + (layout.isPlain() ? "]" : ", layout=" + layout + "]");
    }

    /** Whether it is a single piece made again: a grid of one, filled by its only shape. */
    public boolean isOnePiece() {
        return grid.pieces() == 1 && shapes.size() == 1;
    }

    public boolean isFirstDesign() {
        return design == FIRST_DESIGN;
    }

    public WoodLimits limits() {
        return WoodLimits.of(thickness, kerf);
    }
}
