package puzzleworkshop.pattern;

import java.util.List;
import java.util.stream.Stream;
import puzzleworkshop.cutfiles.writing.CutPace;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * The cut lines of one puzzle, made and verified by {@code mesh.PatternMaker}; in millimetres from the top left corner of
 * the finished size, y down.
 *
 * @param spec what it was made from
 * @param inner every inner line once, as long runs from edge to edge (and around personal shapes)
 * @param outline the outer edge, closed
 * @param pieces in reading order
 * @param verified what the geometry check found
 * @param innerLengthMm length of all inner lines
 * @param outlineLengthMm length of the outline
 */
public record CutPattern(
        PatternSpec spec,
        List<CurvePath> inner,
        CurvePath outline,
        List<Piece> pieces,
        Verified verified,
        double innerLengthMm,
        double outlineLengthMm) {

    /**
     * What the check of all lines against each other found; a pattern that fails it is never handed out.
     *
     * @param edges how many stretches of line were compared
     * @param redrawn how many of them had to be drawn again more calmly
     * @param closestAllowedMm the limit
     * @param smallestGapMm the smallest distance found between lines that do not meet, necks included; at most three
     *        times the limit is looked for
     * @param unlikeMm no two inner edges come nearer to each other than this, laid upon each other in the best way; looked
     *        to a little beyond the play that the kerf leaves; zero in the first design, where it is not looked for
     * @param edgesTold whether each two inner edges differ by more than a solver could take for a fit
     * @param alikeShapes names of two personal pieces that would go into each other's places; empty when none would
     */
    public record Verified(
            int edges,
            int redrawn,
            double closestAllowedMm,
            double smallestGapMm,
            double unlikeMm,
            boolean edgesTold,
            List<String> alikeShapes) {}

    public CutPattern {
        inner = List.copyOf(inner);
        pieces = List.copyOf(pieces);
    }

    public double totalLengthMm() {
        return innerLengthMm + outlineLengthMm;
    }

    /** Inner lines, then the outline, as drawn. */
    public List<CurvePath> lines() {
        return Stream.concat(inner.stream(), Stream.of(outline)).toList();
    }

    /** All lines as one SVG path in millimetres: inner lines, then the outline. */
    public String svgPathData() {
        return innerPathData() + outline.svgPathData();
    }

    public String innerPathData() {
        StringBuilder text = new StringBuilder();
        inner.forEach(line -> text.append(line.svgPathData()));
        return text.toString();
    }

    public String outlinePathData() {
        return outline.svgPathData();
    }

    /** Its lines in the order in which they are cut at the usual pace; what cut files are written from. */
    public CutPlan plan(CutPlan.Sequence sequence) {
        return plan(sequence, CutPace.USUAL);
    }

    /** The same at the pace of a job. */
    public CutPlan plan(CutPlan.Sequence sequence, CutPace pace) {
        String title = pieces().size() + " pieces, " + spec.grid().columns() + " x "
                + spec.grid().rows() + ", pattern " + spec.seed();
        return CutPlan.of(title, inner, List.of(outline), sequence, pace);
    }
}
