package puzzleworkshop.geometry;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * How a blank is marked out on a board with a tape alone: each of its corners by its distances from two corners of the
 * board, which are the ends of the board's longest side. Two arcs meet in the corner (and once more beyond that side).
 *
 * @param a one end of the board's longest side, in the board's own millimetres
 * @param b its other end
 * @param corners of the blank, in their order around it
 */
public record MarkingOut(Point a, Point b, List<Corner> corners) {

    /** One corner of the blank with its distances from both ends. */
    public record Corner(Point at, Length fromA, Length fromB) {}

    public static MarkingOut of(Outline board, Placement placement, Size blank) {
        List<Point> ring = board.outer();
        int longest = IntStream.range(0, ring.size())
                .boxed()
                .max(Comparator.comparingDouble(i -> ring.get(i).distanceTo(ring.get((i + 1) % ring.size()))))
                .orElseThrow();
        Point a = ring.get(longest);
        Point b = ring.get((longest + 1) % ring.size());
        return new MarkingOut(
                a,
                b,
                placement.corners(blank).stream()
                        .map(corner ->
                                new Corner(corner, Length.mm(corner.distanceTo(a)), Length.mm(corner.distanceTo(b))))
                        .toList());
    }

    /** Whether the blank lies along the sides of its board's drawing, so that two edges are enough to measure from. */
    public static boolean isStraight(Placement placement) {
        double off = placement.degrees() % 90;
        return Math.min(off, 90 - off) < 0.05;
    }
}
