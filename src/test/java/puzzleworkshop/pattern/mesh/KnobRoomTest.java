package puzzleworkshop.pattern.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.BruteForceLikeness;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.edges.EdgeShape;
import puzzleworkshop.pattern.edges.PieceLikeness;

/** How many edges can differ, and how alike the most alike edges and pieces are. */
@Tag("slow")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class KnobRoomTest {

    /** What was drawn bounds from below what can be had: 1,000 pieces of 20 mm without two edges alike. */
    @Test
    void the_bounds_hold_what_was_really_drawn() {
        for (CutStyle style : CutStyle.values()) {
            PatternSpec spec =
                    PatternSpec.of(Size.mm(800, 500), new PieceGrid(40, 25), 3).withStyle(style);
            KnobRoom room = KnobRoom.of(spec);
            assertThat(room.needed()).as(style.name()).isEqualTo(40 * 24 + 39 * 25);
            assertThat(room.atMost())
                    .as(style.name())
                    .isGreaterThan(room.needed())
                    .isGreaterThanOrEqualTo(room.atLeast());
        }
    }

    @Test
    void larger_pieces_leave_room_for_more() {
        double small = KnobRoom.of(PatternSpec.of(Size.mm(120, 120), new PieceGrid(10, 10), 3))
                .atLeast();
        double usual = KnobRoom.of(PatternSpec.of(Size.mm(200, 200), new PieceGrid(10, 10), 3))
                .atLeast();
        assertThat(usual).isGreaterThan(5 * small);
    }

    /** The distance by brute force, which shares no code with the pattern's own. */
    @Test
    void the_two_edges_most_alike_are_as_far_apart_as_brute_force_finds() {
        CutPattern pattern = PatternMaker.make(PatternSpec.of(Size.mm(160, 120), new PieceGrid(8, 6), 9));
        PieceLikeness likeness = PieceLikeness.of(pattern);
        BruteForceLikeness.Found found = BruteForceLikeness.of(
                pattern.inner(), pattern.outline(), 0.2, 1.2 * likeness.edges().mm());
        assertThat(likeness.edges().mm()).isCloseTo(found.closestMm(), within(0.12 * found.closestMm()));
        assertThat(likeness.edges().areaMm2()).isPositive();
    }

    /** A piece fits no better than its worst edge, and that is no nearer than the two edges most alike. */
    @Test
    void whole_pieces_are_farther_apart_than_single_edges() {
        CutPattern pattern = PatternMaker.make(PatternSpec.of(Size.mm(240, 180), new PieceGrid(12, 9), 9));
        PieceLikeness likeness = PieceLikeness.of(pattern);
        assertThat(likeness.pieces().mm()).isGreaterThan(likeness.edges().mm());
        assertThat(likeness.pieces().mm()).isGreaterThan(pattern.verified().unlikeMm());
    }

    /** Pieces that are the same four times over are found out: straight squares of the first design. */
    @Test
    void the_same_piece_twice_differs_by_nothing() {
        PatternSpec squares = PatternSpec.of(Size.mm(100, 100), new PieceGrid(5, 5), 1)
                .withStyle(CutStyle.STRAIGHT)
                .withDesign(PatternSpec.FIRST_DESIGN);
        PieceLikeness likeness = PieceLikeness.of(PatternMaker.make(squares));
        assertThat(likeness.pieces().mm()).isLessThan(1e-6);
        assertThat(likeness.pieces().areaMm2()).isLessThan(1e-6);
        assertThat(likeness.edges().mm()).isLessThan(1e-6);
    }

    /** Area between two arcs that differ by 1.5 mm of bulge, by JTS, in the position where they are nearest. */
    @Test
    void the_area_between_two_flat_arcs_is_that_of_the_polygon_between_them() {
        EdgeShape one = EdgeShape.of(arc(3));
        EdgeShape other = EdgeShape.of(arc(4.5));
        double[] apart = new double[EdgeShape.POINTS];
        one.distanceTo(other, 3, apart);
        double area = Arrays.stream(apart).average().orElseThrow() * one.lengthMm();
        double least = Double.POSITIVE_INFINITY;
        for (double shift = 0; shift <= 1.5; shift += 0.05) {
            least = Math.min(least, between(arc(3).translated(0, shift), arc(4.5)));
        }
        double largest = between(arc(3), arc(4.5));
        assertThat(area).isBetween(0.8 * least, largest);
    }

    /** A wider kerf leaves the lines as far apart as they are, and less of that to be felt; where all is play, nothing. */
    @Test
    void what_is_felt_is_what_lies_beyond_the_play_of_the_cut() {
        PatternSpec spec = PatternSpec.of(Size.mm(160, 120), new PieceGrid(8, 6), 9);
        PieceLikeness likeness = PieceLikeness.of(PatternMaker.make(spec));
        double play = spec.kerf().mm();
        assertThat(likeness.playMm()).isEqualTo(play);
        assertThat(likeness.edges().beyondMm(play)).isEqualTo(likeness.edges().mm() - play);
        assertThat(likeness.edges().beyondMm(5)).isZero();
        for (PieceLikeness.Felt felt : List.of(likeness.edges(), likeness.pieces())) {
            assertThat(felt.beyondMm2()).isPositive().isLessThan(felt.areaMm2());
        }
        PatternSpec alike = PatternSpec.of(Size.mm(100, 100), new PieceGrid(5, 5), 1)
                .withStyle(CutStyle.STRAIGHT)
                .withDesign(PatternSpec.FIRST_DESIGN);
        assertThat(PieceLikeness.of(PatternMaker.make(alike)).pieces().beyondMm2())
                .isZero();
    }

    private static double between(CurvePath a, CurvePath b) {
        GeometryFactory jts = new GeometryFactory();
        LineString line = jts.createLineString(coordinates(a));
        double sum = 0;
        List<Point> points = b.flattened(0.01);
        for (int i = 1; i < points.size(); i++) {
            Point middle = points.get(i - 1).towards(points.get(i), 0.5);
            sum += line.distance(jts.createPoint(new Coordinate(middle.xMm(), middle.yMm())))
                    * points.get(i - 1).distanceTo(points.get(i));
        }
        return sum;
    }

    private static Coordinate[] coordinates(CurvePath path) {
        return path.flattened(0.01).stream()
                .map(p -> new Coordinate(p.xMm(), p.yMm()))
                .toArray(Coordinate[]::new);
    }

    private static CurvePath arc(double height) {
        List<Point> points = new java.util.ArrayList<>();
        for (int i = 0; i <= 200; i++) {
            double t = i / 100.0 - 1;
            points.add(Point.of(15 * t, height * (1 - t * t)));
        }
        return CurvePath.through(points, false);
    }
}
