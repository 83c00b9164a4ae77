package puzzleworkshop.cutfiles.writing;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * Lines in the order in which they are cut: two groups, inner lines and outline, each line once, with the way the head
 * travels between them kept short, as far as heat does not gather (see {@link CoolOrder}). What cut files are written
 * from.
 *
 * @param title what is cut, stated in the file
 * @param sequence which group comes first
 * @param inner inner lines in cutting order and direction
 * @param outline outer lines in cutting order; one closed path for a puzzle
 * @param travelMm way between the lines with the beam off, starting at the origin
 * @param travelAsDrawnMm the same in the order the lines were given in
 */
public record CutPlan(
        String title,
        Sequence sequence,
        List<CurvePath> inner,
        List<CurvePath> outline,
        double travelMm,
        double travelAsDrawnMm) {

    /** Which group is cut first. */
    public enum Sequence {
        /** The usual way: the sheet stays put until the last line. */
        INNER_FIRST,
        /** For sheets that move or bow when the inside is weakened. */
        OUTLINE_FIRST
    }

    public CutPlan {
        inner = List.copyOf(inner);
        outline = List.copyOf(outline);
    }

    /** Plans any lines, to be cut at the usual pace; a group may be empty, not both. */
    public static CutPlan of(String title, List<CurvePath> inner, List<CurvePath> outline, Sequence sequence) {
        return of(title, inner, outline, sequence, CutPace.USUAL);
    }

    /** The same at the pace of a job: how long heat has to pass until the beam comes back depends on it. */
    public static CutPlan of(
            String title, List<CurvePath> inner, List<CurvePath> outline, Sequence sequence, CutPace pace) {
        boolean innerFirst = sequence == Sequence.INNER_FIRST;
        List<CurvePath> firstDrawn = innerFirst ? inner : outline;
        List<CurvePath> lastDrawn = innerFirst ? outline : inner;
        Point origin = Point.of(0, 0);
        List<CurvePath> first = ShortTravel.order(firstDrawn, origin);
        if (innerFirst) {
            first = CoolOrder.of(first, origin, pace);
        }
        Point between = first.isEmpty() ? origin : first.getLast().end();
        List<CurvePath> last = ShortTravel.order(lastDrawn, between);
        if (!innerFirst) {
            last = CoolOrder.of(last, between, pace);
        }
        double travel = ShortTravel.travel(first, last, origin);
        double asDrawn = ShortTravel.travel(firstDrawn, lastDrawn, origin);
        return new CutPlan(title, sequence, innerFirst ? first : last, innerFirst ? last : first, travel, asDrawn);
    }

    /** What is compared with: inner lines and outline with the shortest way found, heat not looked at. */
    public static List<CurvePath> beforeCooling(List<CurvePath> inner, List<CurvePath> outline) {
        Point origin = Point.of(0, 0);
        List<CurvePath> first = ShortTravel.order(inner, origin);
        Point between = first.isEmpty() ? origin : first.getLast().end();
        return Stream.concat(first.stream(), ShortTravel.order(outline, between).stream())
                .toList();
    }

    /** All lines in cutting order. */
    public List<CurvePath> inOrder() {
        return (sequence == Sequence.INNER_FIRST
                        ? Stream.concat(inner.stream(), outline.stream())
                        : Stream.concat(outline.stream(), inner.stream()))
                .toList();
    }

    public double lengthMm() {
        return inOrder().stream().mapToDouble(CurvePath::lengthMm).sum();
    }

    /** The frame: the smallest upright rectangle around all lines. */
    public Bounds frame() {
        return inOrder().stream().map(CurvePath::bounds).reduce(Bounds::and).orElseThrow();
    }

    /** The same lines moved, for a place on a sheet. */
    public CutPlan movedBy(double dxMm, double dyMm) {
        return new CutPlan(
                title, sequence, moved(inner, dxMm, dyMm), moved(outline, dxMm, dyMm), travelMm, travelAsDrawnMm);
    }

    /** The same lines laid elsewhere, turned or stretched; the way between them is left as it was. */
    public CutPlan transformed(AffineTransform place) {
        return new CutPlan(
                title,
                sequence,
                inner.stream().map(path -> path.transformed(place)).toList(),
                outline.stream().map(path -> path.transformed(place)).toList(),
                travelMm,
                travelAsDrawnMm);
    }

    private static List<CurvePath> moved(List<CurvePath> paths, double dx, double dy) {
        List<CurvePath> moved = new ArrayList<>(paths.size());
        paths.forEach(path -> moved.add(path.translated(dx, dy)));
        return moved;
    }
}
