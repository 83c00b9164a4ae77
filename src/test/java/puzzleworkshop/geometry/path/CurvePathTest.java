package puzzleworkshop.geometry.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.apache.commons.math3.analysis.integration.RombergIntegrator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CurvePathTest {

    /** Control distance of a quarter circle of radius 1, 4/3·(√2 − 1); computed. */
    private static final double K = 0.5522847498;

    private static CurvePath circle(double r) {
        return new CurvePath(
                Point.of(r, 0),
                List.of(
                        new Segment.Cubic(Point.of(r, K * r), Point.of(K * r, r), Point.of(0, r)),
                        new Segment.Cubic(Point.of(-K * r, r), Point.of(-r, K * r), Point.of(-r, 0)),
                        new Segment.Cubic(Point.of(-r, -K * r), Point.of(-K * r, -r), Point.of(0, -r)),
                        new Segment.Cubic(Point.of(K * r, -r), Point.of(r, -K * r), Point.of(r, 0))),
                true);
    }

    private static CurvePath randomCurve(Random random) {
        Point[] p = new Point[4];
        for (int i = 0; i < 4; i++) {
            p[i] = Point.of(random.nextDouble() * 100, random.nextDouble() * 100);
        }
        return new CurvePath(p[0], List.of(new Segment.Cubic(p[1], p[2], p[3])), false);
    }

    /** Arc length of y = x² on [0, 1]: √5/2 + asinh(2)/4, calculus. */
    @Test
    void a_parabola_has_the_arc_length_of_calculus() {
        CurvePath parabola = new CurvePath(
                Point.of(0, 0),
                List.of(new Segment.Cubic(Point.of(1 / 3.0, 0), Point.of(2 / 3.0, 1 / 3.0), Point.of(1, 1))),
                false);
        assertThat(parabola.lengthMm()).isCloseTo(1.4789428575446, within(1e-12));
        assertThat(parabola.reversed().lengthMm()).isCloseTo(1.4789428575446, within(1e-12));
    }

    /** Reference: Commons Math 3.6.1, Romberg integration of the speed. */
    @Test
    void random_curves_have_the_length_commons_math_finds() {
        Random random = new Random(Seeds.from(20261125));
        for (int i = 0; i < 300; i++) {
            CurvePath curve = randomCurve(random);
            Segment segment = curve.segments().getFirst();
            double reference = new RombergIntegrator(1e-9, 1e-9, 4, 32)
                    .integrate(
                            50_000_000,
                            t -> {
                                double[] v = segment.velocity(curve.start(), t);
                                return Math.hypot(v[0], v[1]);
                            },
                            0,
                            1);
            assertThat(curve.lengthMm()).as("curve %d of seed 20261125", i).isCloseTo(reference, within(1e-5));
        }
    }

    /** Four cubic arcs leave a circle by 0.02725 % of the radius at most; classical. */
    @Test
    void four_cubics_are_a_circle_to_three_in_ten_thousand() {
        CurvePath circle = circle(10);
        double worst = 0;
        for (int s = 0; s < 4; s++) {
            for (int i = 0; i <= 1000; i++) {
                worst = Math.max(worst, Math.abs(circle.at(s, i / 1000.0).distanceTo(Point.of(0, 0)) - 10));
            }
        }
        assertThat(worst / 10).isCloseTo(0.0002725, within(1e-6));
        assertThat(circle.lengthMm()).isCloseTo(2 * Math.PI * 10, within(0.02));
        assertThat(circle.curvature(0, 0.5)).isCloseTo(0.1, within(0.002));
        assertThat(circle.reversed().curvature(0, 0.5)).isCloseTo(-0.1, within(0.002));
        assertThat(circle.bounds()).isEqualTo(new Bounds(-10, -10, 10, 10));
    }

    @Test
    void chords_stay_within_the_tolerance() {
        Random random = new Random(Seeds.from(7));
        for (int i = 0; i < 200; i++) {
            CurvePath curve = randomCurve(random);
            double tolerance = 0.02;
            List<Point> points = curve.flattened(tolerance);
            assertThat(points.getFirst()).isEqualTo(curve.start());
            assertThat(points.getLast()).isEqualTo(curve.end());
            int steps = points.size() - 1;
            for (int k = 0; k < steps; k++) {
                Point a = points.get(k);
                Point b = points.get(k + 1);
                for (int j = 1; j < 8; j++) {
                    Point on = curve.at(0, (k + j / 8.0) / steps);
                    assertThat(distance(on, a, b)).as("curve %d of seed 7", i).isLessThanOrEqualTo(tolerance);
                }
            }
        }
    }

    private static double distance(Point p, Point a, Point b) {
        return org.locationtech.jts.algorithm.Distance.pointToSegment(
                new org.locationtech.jts.geom.Coordinate(p.xMm(), p.yMm()),
                new org.locationtech.jts.geom.Coordinate(a.xMm(), a.yMm()),
                new org.locationtech.jts.geom.Coordinate(b.xMm(), b.yMm()));
    }

    @Test
    void bounds_touch_the_curve_and_hold_it() {
        Random random = new Random(Seeds.from(11));
        for (int i = 0; i < 300; i++) {
            CurvePath curve = randomCurve(random);
            Bounds bounds = curve.bounds();
            Bounds sampled = Bounds.at(curve.start());
            for (int j = 0; j <= 4000; j++) {
                sampled = sampled.and(curve.at(0, j / 4000.0));
            }
            assertThat(bounds.grownBy(1e-9).holds(sampled))
                    .as("curve %d of seed 11", i)
                    .isTrue();
            assertThat(sampled.grownBy(1e-3).holds(bounds))
                    .as("curve %d of seed 11", i)
                    .isTrue();
        }
    }

    @Test
    void a_closed_path_is_closed_by_a_line_where_it_must() {
        CurvePath triangle = CurvePath.through(List.of(Point.of(0, 0), Point.of(30, 0), Point.of(30, 40)), true);
        assertThat(triangle.lengthMm()).isEqualTo(120);
        assertThat(triangle.end()).isEqualTo(triangle.start());
        assertThat(triangle.svgPathData()).isEqualTo("M0 0L30 0L30 40Z");
        assertThat(triangle.reversed().lengthMm()).isEqualTo(120);
    }

    /** Area of a parabola's segment, 1/6 of the unit square between y = x² and its chord: Archimedes. */
    @Test
    void area_is_that_of_archimedes() {
        CurvePath segment = new CurvePath(
                Point.of(0, 0),
                List.of(new Segment.Cubic(Point.of(1 / 3.0, 0), Point.of(2 / 3.0, 1 / 3.0), Point.of(1, 1))),
                true);
        assertThat(Math.abs(segment.signedAreaMm2())).isCloseTo(1 / 6.0, within(1e-15));
        assertThat(segment.reversed().signedAreaMm2()).isCloseTo(-segment.signedAreaMm2(), within(1e-15));
        assertThat(circle(10).signedAreaMm2())
                .isCloseTo(Math.PI * 100, within(0.1))
                .isPositive();
    }

    @Test
    void a_part_of_a_curve_is_the_same_curve() {
        Random random = new Random(Seeds.from(3));
        for (int i = 0; i < 100; i++) {
            CurvePath curve = randomCurve(random);
            Segment whole = curve.segments().getFirst();
            double t0 = random.nextDouble();
            double t1 = t0 + (1 - t0) * random.nextDouble();
            Point start = whole.at(curve.start(), t0);
            Segment part = whole.part(curve.start(), t0, t1);
            for (int k = 0; k <= 10; k++) {
                Point expected = whole.at(curve.start(), t0 + (t1 - t0) * k / 10.0);
                assertThat(part.at(start, k / 10.0).distanceTo(expected))
                        .as("curve %d of seed 3", i)
                        .isLessThan(1e-10);
            }
        }
    }

    @Test
    void moving_and_turning_keep_the_length() {
        CurvePath circle = circle(10);
        CurvePath moved = circle.translated(5, -3).rotated(Math.toRadians(90), Point.of(5, -3));
        assertThat(moved.lengthMm()).isCloseTo(circle.lengthMm(), within(1e-9));
        assertThat(moved.start().distanceTo(Point.of(5, 7))).isLessThan(1e-12);
    }

    @Test
    void path_text_keeps_thousandths_and_signs() {
        CurvePath path = CurvePath.through(List.of(Point.of(-0.0004, 1.5), Point.of(-12.3456, 0.05)), false);
        assertThat(path.svgPathData()).isEqualTo("M0 1.5L-12.346 0.05");
    }
}
