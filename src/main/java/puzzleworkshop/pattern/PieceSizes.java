package puzzleworkshop.pattern;

import puzzleworkshop.geometry.Bounds;

/**
 * How large the pieces of a pattern are, as the beam leaves them: half a kerf is taken off along each outline.
 *
 * @param pieces how many
 * @param areaMm2 of all together
 * @param smallestMm2 of the smallest
 * @param aroundMm length of all their outlines together
 * @param longestMm the longest side of any, as drawn and as it lies in the picture
 * @param widestMm the longest shorter side of any
 */
public record PieceSizes(
        int pieces, double areaMm2, double smallestMm2, double aroundMm, double longestMm, double widestMm) {

    public static PieceSizes of(CutPattern pattern) {
        double halfKerf = pattern.spec().kerf().mm() / 2;
        double area = 0;
        double smallest = Double.POSITIVE_INFINITY;
        double around = 0;
        double longest = 0;
        double widest = 0;
        for (Piece piece : pattern.pieces()) {
            double length = piece.outline().lengthMm();
            double left = Math.max(0, piece.areaMm2() - length * halfKerf);
            area += left;
            smallest = Math.min(smallest, left);
            around += length;
            Bounds box = piece.outline().bounds();
            longest = Math.max(longest, Math.max(box.width(), box.height()));
            widest = Math.max(widest, Math.min(box.width(), box.height()));
        }
        return new PieceSizes(pattern.pieces().size(), area, smallest, around, longest, widest);
    }
}
