package puzzleworkshop.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

/**
 * A tray for a puzzle: a frame with an opening a little larger than the puzzle, and a backing of the frame's outer size
 * to stick under it. Two boards, two cut plans.
 *
 * @param puzzle finished size of the puzzle
 * @param outline outer edge of the puzzle: rounded corners are followed, waves stand in a plain opening
 * @param border width of the frame's wood
 * @param play gap between puzzle and frame on each side
 */
public record Tray(Size puzzle, PuzzleEdge outline, Length border, Length play) {

    /** Common practice. */
    public static final Length USUAL_BORDER = Length.mm(15);

    public static final Length USUAL_PLAY = Length.mm(0.5);

    private static final double NARROWEST_BORDER_MM = 5;
    private static final double WIDEST_PLAY_MM = 5;
    private static final double FLATTENING_MM = 0.01;
    private static final int QUADRANT_STEPS = 16;
    private static final double OUTER_CORNER_MM = 5;
    /** Handle of a quarter circle, 4/3·(√2 − 1). */
    private static final double QUARTER = 4.0 / 3 * (Math.sqrt(2) - 1);

    public Tray {
        if (border.mm() < NARROWEST_BORDER_MM) {
            throw new Refused("pattern.tray.border", border, Length.mm(NARROWEST_BORDER_MM));
        }
        if (play.mm() < 0 || play.mm() > WIDEST_PLAY_MM) {
            throw new Refused("pattern.tray.play", play, Length.mm(WIDEST_PLAY_MM));
        }
    }

    public static Tray of(PatternSpec spec) {
        return new Tray(spec.size(), spec.outline(), USUAL_BORDER, USUAL_PLAY);
    }

    /** Outer size of frame and backing. */
    public Size outerSize() {
        return puzzle.grownBy(border.plus(play));
    }

    /** The frame: its opening is an inner line, cut before the outer edge. */
    public CutPlan frame(CutPlan.Sequence sequence) {
        double in = border.mm();
        double radius =
                outline.kind() == PuzzleEdge.Kind.ROUNDED ? outline.measure().mm() + play.mm() : 0;
        Size opening = puzzle.grownBy(play);
        CurvePath inner = outline.isCurved() ? aroundCurve() : rectangle(in, in, opening, radius);
        return CutPlan.of("Tray, frame", List.of(inner), List.of(outer()), sequence);
    }

    /** The puzzle's own curve, farther out by the play all round. */
    private CurvePath aroundCurve() {
        double in = border.mm() + play.mm();
        Coordinate[] ring = outline.curve(puzzle).translated(in, in).flattened(FLATTENING_MM).stream()
                .map(p -> new Coordinate(p.xMm(), p.yMm()))
                .toArray(Coordinate[]::new);
        Geometry grown = BufferOp.bufferOp(
                new GeometryFactory().createPolygon(ring), play.mm(), new BufferParameters(QUADRANT_STEPS));
        Coordinate[] around = ((Polygon) grown).getExteriorRing().getCoordinates();
        return CurvePath.through(
                Arrays.stream(around, 0, around.length - 1)
                        .map(c -> Point.of(c.x, c.y))
                        .toList(),
                true);
    }

    public CutPlan backing() {
        return CutPlan.of("Tray, backing", List.of(), List.of(outer()), CutPlan.Sequence.INNER_FIRST);
    }

    private CurvePath outer() {
        return rectangle(0, 0, outerSize(), OUTER_CORNER_MM);
    }

    private static CurvePath rectangle(double x, double y, Size size, double radius) {
        double w = size.width().mm();
        double h = size.height().mm();
        double r = Math.min(radius, Math.min(w, h) / 2);
        if (r == 0) {
            return CurvePath.through(
                    List.of(Point.of(x, y), Point.of(x + w, y), Point.of(x + w, y + h), Point.of(x, y + h)), true);
        }
        double k = r * (1 - QUARTER);
        List<Segment> around = new ArrayList<>();
        around.add(new Segment.Line(Point.of(x + w - r, y)));
        around.add(new Segment.Cubic(Point.of(x + w - k, y), Point.of(x + w, y + k), Point.of(x + w, y + r)));
        around.add(new Segment.Line(Point.of(x + w, y + h - r)));
        around.add(
                new Segment.Cubic(Point.of(x + w, y + h - k), Point.of(x + w - k, y + h), Point.of(x + w - r, y + h)));
        around.add(new Segment.Line(Point.of(x + r, y + h)));
        around.add(new Segment.Cubic(Point.of(x + k, y + h), Point.of(x, y + h - k), Point.of(x, y + h - r)));
        around.add(new Segment.Line(Point.of(x, y + r)));
        around.add(new Segment.Cubic(Point.of(x, y + k), Point.of(x + k, y), Point.of(x + r, y)));
        return new CurvePath(Point.of(x + r, y), around, true);
    }
}
