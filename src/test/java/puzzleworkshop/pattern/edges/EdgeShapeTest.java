package puzzleworkshop.pattern.edges;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class EdgeShapeTest {

    /** An arc and the same arc bulging 0.3 mm more: the best shift halves it (closed form for flat arcs: half the sagitta's difference). */
    @Test
    void the_best_shift_halves_the_distance_of_two_flat_arcs() {
        EdgeShape one = EdgeShape.of(arc(2.0));
        EdgeShape other = EdgeShape.of(arc(2.3));
        assertThat(one.distanceTo(other, 0.2)).isCloseTo(0.15, within(0.02));
    }

    @Test
    void an_edge_moved_and_turned_is_the_same_edge() {
        Random random = new Random(3);
        for (int i = 0; i < 50; i++) {
            CurvePath edge = arc(1 + random.nextDouble() * 4);
            CurvePath moved =
                    edge.rotated(random.nextDouble() * 6, Point.of(3, 4)).translated(50, 20);
            assertThat(EdgeShape.of(edge).distanceTo(EdgeShape.of(moved), 0.1))
                    .as("arc %d of seed 3", i)
                    .isLessThan(1e-6);
            assertThat(EdgeShape.of(edge)
                            .distanceTo(EdgeShape.of(moved.reversed()).turned(), 0.1))
                    .as("arc %d of seed 3, from the other side", i)
                    .isLessThan(1e-6);
        }
    }

    /** Area between two arcs that differ by 1.5 mm of bulge, by JTS, in the position where they are nearest. */
    @Test
    void the_area_between_two_flat_arcs_is_that_of_the_polygon_between_them() {
        EdgeShape one = EdgeShape.of(arc(3));
        EdgeShape other = EdgeShape.of(arc(4.5));
        double[] apart = new double[EdgeShape.POINTS];
        BestMotion.distanceMm(one, other, 3, apart);
        double area = Arrays.stream(apart).average().orElseThrow() * one.lengthMm();
        double least = Double.POSITIVE_INFINITY;
        for (double shift = 0; shift <= 1.5; shift += 0.05) {
            least = Math.min(least, between(arc(3).translated(0, shift), arc(4.5)));
        }
        double largest = between(arc(3), arc(4.5));
        assertThat(area).isBetween(0.8 * least, largest);
    }

    /** What is told apart by a quick look is apart in truth: the best motion itself is the judge, in a few thousand pairs. */
    @Test
    void a_quick_look_never_parts_two_that_the_best_motion_brings_together() {
        Random random = new Random(11);
        List<EdgeShape> shapes = new ArrayList<>();
        for (int i = 0; i < 90; i++) {
            shapes.add(EdgeShape.of(wave(random)));
        }
        int near = 0;
        int parted = 0;
        for (EdgeShape one : shapes) {
            for (EdgeShape other : shapes) {
                boolean within = BestMotion.distanceMm(one, other, 0.3) < 0.3;
                near += within ? 1 : 0;
                parted += one.couldBeWithin(other, 0.3) ? 0 : 1;
                if (within) {
                    assertThat(one.couldBeWithin(other, 0.3)).isTrue();
                }
            }
        }
        assertThat(near).isGreaterThan(300);
        assertThat(parted).isGreaterThan(3000);
    }

    @Test
    void an_album_answers_as_looking_at_each_edge_by_itself_does() {
        Random random = new Random(12);
        EdgeAlbum album = new EdgeAlbum();
        List<EdgeShape> held = new ArrayList<>();
        int found = 0;
        for (int i = 0; i < 80; i++) {
            EdgeShape shape = EdgeShape.of(wave(random));
            boolean one = false;
            double nearest = 0.3;
            for (EdgeShape other : held) {
                one |= shape.distanceTo(other, 0.3) < 0.3;
                nearest = Math.min(nearest, shape.distanceTo(other, nearest));
            }
            assertThat(album.hasNearer(shape, 0.3)).isEqualTo(one);
            assertThat(album.nearest(shape, 0.3, -1)).isEqualTo(nearest);
            found += one ? 1 : 0;
            album.add(shape);
            held.add(shape);
            held.add(shape.turned());
        }
        assertThat(found).isBetween(20, 75);
    }

    /** A line of 20 mm with two bends of up to 1.5 mm. */
    private static CurvePath wave(Random random) {
        double first = 3 * random.nextDouble() - 1.5;
        double second = 3 * random.nextDouble() - 1.5;
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= 100; i++) {
            double t = i / 100.0;
            points.add(Point.of(20 * t, first * Math.sin(Math.PI * t) + second * Math.sin(2 * Math.PI * t)));
        }
        return CurvePath.through(points, false);
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
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= 200; i++) {
            double t = i / 100.0 - 1;
            points.add(Point.of(15 * t, height * (1 - t * t)));
        }
        return CurvePath.through(points, false);
    }
}
