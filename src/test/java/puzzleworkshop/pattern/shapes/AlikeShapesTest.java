package puzzleworkshop.pattern.shapes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.LargeShapes;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PersonalShapes;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class AlikeShapesTest {

    private static final Length KERF = PatternSpec.USUAL_KERF;

    @Test
    void a_shape_turned_moved_and_drawn_from_another_point_is_the_same_shape() {
        Random random = new Random(Seeds.from(1603));
        PersonalShape heart = PersonalShapes.heart(Point.of(0, 0), Length.mm(50));
        for (int i = 0; i < 20; i++) {
            double turn = 2 * Math.PI * random.nextDouble();
            CurvePath other = begunElsewhere(heart.outline(), random.nextInt(5))
                    .rotated(turn, Point.of(3, -7))
                    .translated(80, 20);
            assertThat(distance(heart.outline(), i % 2 == 0 ? other : other.reversed()))
                    .as("turned by %.3f", turn)
                    .isLessThan(0.05);
        }
    }

    /** Two circles, whatever their middles, are apart by the difference of their radii once they lie upon each other. */
    @Test
    void two_circles_are_apart_by_the_difference_of_their_radii() {
        assertThat(distance(circle(0, 0, 20), circle(300, 5, 20.7))).isEqualTo(0.7, within(0.02));
    }

    /** JTS's distance after a search over all turns about the middles and small shifts: ours is no larger. */
    @Tag("slow")
    @Test
    void what_is_found_is_no_more_than_what_a_search_over_all_turns_finds_with_jts() {
        CurvePath heart = PersonalShapes.heart(Point.of(0, 0), Length.mm(40)).outline();
        CurvePath other =
                PersonalShapes.heart(Point.of(0, 0), Length.mm(42)).outline().rotated(1.234, Point.of(0, 0));
        double least = Double.POSITIVE_INFINITY;
        Geometry fixed = ring(other);
        for (double turn = 1.1; turn < 1.4; turn += 0.01) {
            for (double dx = -1; dx <= 1; dx += 0.1) {
                for (double dy = -1; dy <= 1; dy += 0.1) {
                    CurvePath laid = heart.rotated(turn, Point.of(0, 0)).translated(dx, dy);
                    least = Math.min(least, DiscreteHausdorffDistance.distance(ring(laid), fixed));
                }
            }
        }
        assertThat(distance(heart, other)).isBetween(least - 0.25, least + 0.05);
    }

    @Test
    void a_name_with_the_same_letter_twice_has_pieces_that_would_go_into_each_others_places_until_their_sizes_differ() {
        List<PersonalShape> anna = PersonalShapes.name("ANNA", Point.of(180, 100), Length.mm(45), Length.mm(20.5));
        assertThat(AlikeShapes.of(anna, KERF)).isPresent();
        List<PersonalShape> apart = SizesApart.of(anna, KERF);
        assertThat(AlikeShapes.of(apart, KERF)).isEmpty();
        assertThat(apart).extracting(PersonalShape::name).containsExactly("A", "N", "N", "A");
        assertThat(apart.subList(0, 2)).isEqualTo(anna.subList(0, 2));
        for (int i = 0; i < 4; i++) {
            double now = apart.get(i).outline().bounds().height();
            assertThat(now).isBetween(45 * 0.95, 45.0 + 1e-9);
        }
    }

    @Test
    void eight_shapes_for_children_hold_each_shape_twice_and_none_goes_into_anothers_place() {
        Size size = Size.mm(400, 260);
        PieceGrid grid = PieceGrid.nearest(size, 24);
        List<PersonalShape> laid = LargeShapes.laid(size, grid, 8);
        assertThat(laid.size()).isGreaterThan(4);
        assertThat(AlikeShapes.of(laid, KERF)).isPresent();
        List<PersonalShape> apart = SizesApart.of(laid, KERF);
        assertThat(AlikeShapes.of(apart, KERF)).isEmpty();
        CutPattern pattern = PatternMaker.make(PatternSpec.of(size, grid, 5).withShapes(apart));
        assertThat(pattern.verified().alikeShapes()).isEmpty();
    }

    @Test
    void a_pattern_with_two_hearts_of_one_size_says_which_pieces_could_be_exchanged() {
        List<PersonalShape> hearts = List.of(
                PersonalShapes.heart(Point.of(80, 90), Length.mm(45)),
                PersonalShapes.heart(Point.of(220, 90), Length.mm(45)));
        CutPattern pattern = PatternMaker.make(
                PatternSpec.of(Size.mm(300, 180), new PieceGrid(12, 7), 3).withShapes(hearts));
        assertThat(pattern.verified().alikeShapes()).containsExactly("heart", "heart");
        CutPattern one = PatternMaker.make(
                PatternSpec.of(Size.mm(300, 180), new PieceGrid(12, 7), 3).withShapes(hearts.subList(0, 1)));
        assertThat(one.verified().alikeShapes()).isEmpty();
    }

    private static double distance(CurvePath one, CurvePath other) {
        return new OutlineDistance(one).to(new OutlineDistance(other));
    }

    private static CurvePath circle(double x, double y, double radius) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 720; i++) {
            double angle = Math.toRadians(i / 2.0);
            points.add(Point.of(x + radius * Math.cos(angle), y + radius * Math.sin(angle)));
        }
        return CurvePath.through(points, true);
    }

    private static CurvePath begunElsewhere(CurvePath closed, int at) {
        List<puzzleworkshop.geometry.path.Segment> segments = new ArrayList<>(closed.segments());
        Point start = at == 0 ? closed.start() : segments.get(at - 1).to();
        java.util.Collections.rotate(segments, -at);
        return new CurvePath(start, segments, true).transformed(new AffineTransform());
    }

    private static Geometry ring(CurvePath path) {
        List<Coordinate> at = new ArrayList<>(path.flattened(0.05).stream()
                .map(p -> new Coordinate(p.xMm(), p.yMm()))
                .toList());
        at.add(at.getFirst());
        return new GeometryFactory().createLinearRing(at.toArray(Coordinate[]::new));
    }
}
