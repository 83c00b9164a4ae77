package puzzleworkshop.pattern.judged;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.AffineTransformation;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class HoldTest {

    private static final GeometryFactory JTS = new GeometryFactory();
    private static final PatternSpec SPEC = PatternSpec.of(Size.mm(200, 150), new PieceGrid(8, 6), 3);

    @Test
    void every_joint_with_a_knob_holds_and_no_wave_or_straight_line_does() {
        Hold knobs = Hold.of(PatternMaker.make(SPEC));
        assertThat(knobs.joints()).isEqualTo(8 * 5 + 6 * 7);
        assertThat(knobs.holdsTogether()).isTrue();
        assertThat(knobs.weakestGripMm()).isGreaterThan(0.1);
        assertThat(knobs.narrowestMm()).isGreaterThanOrEqualTo(knobs.leastWoodMm());
        assertThat(Hold.of(PatternMaker.make(SPEC.withStyle(CutStyle.WAVY))).holding())
                .isLessThan(5);
        assertThat(Hold.of(PatternMaker.make(SPEC.withStyle(CutStyle.STRAIGHT))).holding())
                .isLessThan(5);
    }

    /** A keyhole drawn by hand: neck 4, head 6 wide: each side of the head stands 1 mm over the neck. */
    @Test
    void the_grip_of_a_square_keyhole_is_what_its_head_overhangs_its_neck() {
        List<Point> line = points(0, 0, 8, 0, 8, 3, 7, 3, 7, 6, 13, 6, 13, 3, 12, 3, 12, 0, 20, 0);
        assertThat(Hold.gripMm(line)).isCloseTo(1, within(0.02));
    }

    @Test
    void a_dovetail_holds_and_a_wedge_does_not() {
        assertThat(Hold.gripMm(points(0, 0, 8, 0, 7, 5, 13, 5, 12, 0, 20, 0))).isGreaterThan(0.9);
        assertThat(Hold.gripMm(points(0, 0, 7, 0, 8, 5, 12, 5, 13, 0, 20, 0))).isLessThan(1e-9);
    }

    /** JTS pulls a neighbour away by little steps in many directions: a joint that holds lets none go without overlap. */
    @Test
    void jts_cannot_pull_apart_two_neighbours_that_hold() {
        CutPattern pattern = PatternMaker.make(SPEC.withDesign(PatternSpec.DESIGN));
        Geometry one = wood(pattern.pieces().get(9), pattern.spec().kerf());
        Geometry two = wood(pattern.pieces().get(10), pattern.spec().kerf());
        for (int i = 0; i < 36; i++) {
            double angle = Math.PI * 2 * i / 36;
            boolean caught = false;
            for (double d = 0.1; d < 12 && !caught; d += 0.1) {
                caught = AffineTransformation.translationInstance(d * Math.cos(angle), d * Math.sin(angle))
                        .transform(two)
                        .intersects(one);
            }
            assertThat(caught).as("pulled to %d degrees", 10 * i).isTrue();
        }
    }

    /**
     * Two keyholes on neighbouring edges of one corner: heads 3 mm deep that reach 10 and 10 mm from it and come within 2 mm of
     * each other by school geometry; near the corner the lines meet, which is no bridge.
     */
    @Test
    void the_wood_between_two_knobs_is_measured_away_from_where_their_lines_meet() {
        List<Point> across = points(0, 0, 8, 0, 8, 3, 7, 3, 7, 6, 13, 6, 13, 3, 12, 3, 12, 0, 20, 0);
        List<Point> down = points(0, 0, 0, 11, 2, 11, 2, 8, 9, 8, 9, 14, 2, 14, 2, 13, 0, 13, 0, 20);
        assertThat(KnobBridges.leastMm(List.of(across, down), 5)).isCloseTo(2, within(1e-9));
        assertThat(KnobBridges.leastMm(List.of(across, down), 1.5)).isInfinite();
        assertThat(KnobBridges.leastMm(List.of(points(0, 0, 20, 0), points(0, 0, 0, 20)), 5))
                .isInfinite();
    }

    /** JTS measures every pair of joints, cut into short bits, without a grid. */
    @Test
    void jts_finds_the_same_least_wood_between_knobs() {
        for (long seed = 1; seed <= 4; seed++) {
            CutPattern pattern = PatternMaker.make(PatternSpec.of(Size.mm(80, 60), new PieceGrid(4, 3), seed));
            List<List<Point>> joints = Hold.joints(pattern);
            double look = 3 * pattern.verified().closestAllowedMm();
            double least = look;
            for (int i = 0; i < joints.size(); i++) {
                for (int j = 0; j < i; j++) {
                    least = Math.min(least, apart(joints.get(i), joints.get(j), least));
                }
            }
            Hold hold = Hold.of(pattern);
            assertThat(hold.bridgeMm()).isCloseTo(least - pattern.spec().kerf().mm(), within(1e-9));
            assertThat(hold.neckMm()).isGreaterThanOrEqualTo(hold.narrowestMm());
            assertThat(hold.bridgeMm()).isGreaterThanOrEqualTo(hold.narrowestMm());
        }
    }

    private static double apart(List<Point> one, List<Point> other, double limit) {
        double least = limit;
        for (int i = 1; i < one.size(); i++) {
            LineString a = bit(one, i);
            for (int j = 1; j < other.size(); j++) {
                LineString b = bit(other, j);
                if (a.getEnvelopeInternal().distance(b.getEnvelopeInternal()) < least) {
                    double across = a.distance(b);
                    if (across < least && meetingWay(one, i, other, j) > 5 * across) {
                        least = across;
                    }
                }
            }
        }
        return least;
    }

    private static double meetingWay(List<Point> one, int i, List<Point> other, int j) {
        double way = Double.POSITIVE_INFINITY;
        for (boolean oneTurned : new boolean[] {false, true}) {
            for (boolean otherTurned : new boolean[] {false, true}) {
                List<Point> a = oneTurned ? one.reversed() : one;
                List<Point> b = otherTurned ? other.reversed() : other;
                if (a.getFirst().equals(b.getFirst())) {
                    int upToA = oneTurned ? one.size() - 1 - i : i - 1;
                    int upToB = otherTurned ? other.size() - 1 - j : j - 1;
                    way = Math.min(way, length(a, upToA) + length(b, upToB));
                }
            }
        }
        return way;
    }

    private static double length(List<Point> line, int upTo) {
        double length = 0;
        for (int i = 1; i <= upTo; i++) {
            length += line.get(i - 1).distanceTo(line.get(i));
        }
        return length;
    }

    /** Common practice asks half the thickness of wood as it is cut: 1.5 mm in 3 mm, of which 0.3 mm are browned edges. */
    @Test
    void a_board_asks_for_sound_wood_beside_the_edges_that_a_usual_setting_browns() {
        Hold hold = Hold.of(PatternMaker.make(PatternSpec.of(Size.mm(200, 150), new PieceGrid(8, 6), 3)));
        assertThat(hold.leastWoodMm("CRAFT")).isCloseTo(1.5, within(1e-9));
        assertThat(hold.leastSoundMm("CRAFT")).isCloseTo(1.2, within(1e-9));
        assertThat(hold.leastSoundMm("GENERAL")).isCloseTo(1.5 * 1.25 - 0.3, within(1e-9));
    }

    private static LineString bit(List<Point> line, int i) {
        return JTS.createLineString(new Coordinate[] {
            new Coordinate(line.get(i - 1).xMm(), line.get(i - 1).yMm()),
            new Coordinate(line.get(i).xMm(), line.get(i).yMm())
        });
    }

    private static Geometry wood(Piece piece, Length kerf) {
        return JTS.createPolygon(piece.outline().flattened(0.01).stream()
                        .map(p -> new Coordinate(p.xMm(), p.yMm()))
                        .toArray(Coordinate[]::new))
                .buffer(-kerf.mm() / 2);
    }

    private static List<Point> points(double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            points.add(Point.of(xy[i], xy[i + 1]));
        }
        return points;
    }
}
