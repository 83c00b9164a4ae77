package puzzleworkshop.cutting.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.analysis.integration.SimpsonIntegrator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.machines.Beam;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineCosts;
import puzzleworkshop.machines.Motion;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.support.Seeds;

/** Closed forms: any text on motion control (trapezoid, triangle), mechanics (centripetal limit); proved again here. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
public class CutTimeTest {

    private static final double A = 500;

    /** t = d/v + v/a: 100 mm at 50 mm/s and 500 mm/s² takes 2.1 s. */
    @Test
    void a_long_line_is_a_trapezoid() {
        assertThat(cutSeconds(line(100), 50)).isCloseTo(2.1, within(1e-12));
    }

    /** t = 2·√(d/a): 2 mm at 500 mm/s² takes 0.126491 s. */
    @Test
    void a_short_line_is_a_triangle() {
        assertThat(cutSeconds(line(2), 50)).isCloseTo(0.126491, within(5e-7));
    }

    /** v = √(aR): 10 mm, 500 mm/s² give 70.7107 mm/s. A circle of four cubic arcs is round to 0.03 %. */
    @Test
    void a_circle_is_run_at_the_centripetal_limit() {
        assertThat(motion(200).bendSpeed(10)).isCloseTo(70.7107, within(5e-5));
        double v = Math.sqrt(A * 10);
        double expected = 2 * Math.PI * 10 / v + v / A;
        assertThat(cutSeconds(circle(10), 200)).isCloseTo(expected, within(expected * 0.01));
    }

    @Test
    void a_circle_slower_than_its_limit_is_a_trapezoid_along_its_length() {
        double expected = 2 * Math.PI * 10 / 20 + 20 / A;
        assertThat(cutSeconds(circle(10), 20)).isCloseTo(expected, within(expected * 0.0005));
    }

    /** Two legs at a right angle with no corner deviation are two trapezoids; straight on they are one. */
    @Test
    void without_corner_deviation_the_head_stops_at_corners_but_not_on_a_straight_line() {
        CurvePath corner = CurvePath.through(List.of(Point.of(0, 0), Point.of(100, 0), Point.of(100, 100)), false);
        assertThat(cutSeconds(corner, 50)).isCloseTo(2 * 2.1, within(1e-9));
        CurvePath straight = CurvePath.through(List.of(Point.of(0, 0), Point.of(30, 0), Point.of(100, 0)), false);
        assertThat(cutSeconds(straight, 50)).isCloseTo(2.1, within(1e-9));
    }

    /** The arc touching both legs within δ of a right-angled corner has R = δ/(√2 − 1): plane geometry. */
    @Test
    void a_right_angle_is_passed_on_the_arc_that_its_deviation_allows() {
        Motion motion = new Motion(Speed.mmPerSecond(100), Speed.mmPerSecond(50), A, Length.mm(0.02));
        assertThat(motion.cornerSpeed(Math.PI / 2)).isCloseTo(Math.sqrt(A * 0.02 / (Math.sqrt(2) - 1)), within(1e-9));
        assertThat(motion.cornerSpeed(0)).isInfinite();
        assertThat(motion.cornerSpeed(Math.PI)).isCloseTo(0, within(1e-6));
    }

    /** Braking for a corner begins early enough even when the last stretch is too short for it. */
    @Test
    void looks_ahead_over_many_short_stretches() {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= 1000; i++) {
            points.add(Point.of(i * 0.1, 0));
        }
        assertThat(cutSeconds(CurvePath.through(points, false), 50)).isCloseTo(2.1, within(1e-9));
    }

    /** The trapezoid's time from the arc length that Commons Math integrates. */
    @Test
    void curve_lengths_agree_with_commons_math_integration() {
        Point p0 = Point.of(0, 0);
        Segment.Cubic c = new Segment.Cubic(Point.of(40, 10), Point.of(60, 80), Point.of(120, 90));
        double length = new SimpsonIntegrator(1e-10, 1e-10, 3, 40)
                .integrate(
                        1_000_000,
                        t -> {
                            double[] v = c.velocity(p0, t);
                            return Math.hypot(v[0], v[1]);
                        },
                        0,
                        1);
        double expected = length / 10 + 10 / A;
        assertThat(cutSeconds(new CurvePath(p0, List.of(c), false), 10)).isCloseTo(expected, within(1e-6));
    }

    @Test
    void passes_repeat_the_cut_pause_between_and_travel_back() {
        Machine machine = machine(50, 0);
        CutTime time = CutTime.estimate(List.of(line(100), line(100)), machine, parameters(50, 3));
        assertThat(time.cutting().toSeconds()).isCloseTo(3 * 2 * 2.1, within(1e-9));
        // travel at 100 mm/s over 100 mm: 1 s + 0.2 s; once inside each pass and twice back to the start
        assertThat(time.moves().toSeconds()).isCloseTo(5 * 1.2, within(1e-9));
        assertThat(time.pauses()).isEqualTo(machine.passPause().times(2));
        assertThat(time.total()).isEqualTo(time.running().plus(machine.setUp()));
    }

    @Test
    void a_setting_faster_than_the_machine_runs_at_the_machines_speed() {
        assertThat(CutTime.estimate(List.of(line(100)), machine(50, 0), parameters(500, 1))
                        .cutting()
                        .toSeconds())
                .isCloseTo(2.1, within(1e-9));
    }

    @Test
    void never_quicker_than_length_over_speed_and_slower_with_less_acceleration() {
        long seed = Seeds.from(20261125);
        Random random = new Random(seed);
        for (int i = 0; i < 1_000; i++) {
            Point start = Point.of(random.nextDouble() * 50, random.nextDouble() * 50);
            List<Segment> segments = new ArrayList<>();
            for (int s = random.nextInt(1, 8); s > 0; s--) {
                segments.add(
                        random.nextBoolean()
                                ? new Segment.Line(point(random))
                                : new Segment.Cubic(point(random), point(random), point(random)));
            }
            CurvePath path = new CurvePath(start, segments, random.nextBoolean());
            double speed = 1 + random.nextDouble() * 60;
            double seconds = new PathPace(motion(200), speed).seconds(path);
            Motion lazy = new Motion(Speed.mmPerSecond(200), Speed.mmPerSecond(200), A / 2, Length.ZERO);
            assertThat(seconds).as("seed %d, case %d", seed, i).isGreaterThanOrEqualTo(path.lengthMm() / speed - 1e-9);
            assertThat(new PathPace(lazy, speed).seconds(path))
                    .as("seed %d, case %d", seed, i)
                    .isGreaterThan(seconds);
            assertThat(new PathPace(motion(200), speed).seconds(path.reversed()))
                    .as("seed %d, case %d: backwards takes as long", seed, i)
                    .isCloseTo(seconds, within(seconds * 1e-6));
        }
    }

    @Test
    void nothing_to_cut_is_refused() {
        assertThatThrownBy(() -> CutTime.estimate(List.of(), machine(50, 0), parameters(50, 1)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    public static CurvePath line(double mm) {
        return CurvePath.through(List.of(Point.of(0, 0), Point.of(mm, 0)), false);
    }

    static CurvePath circle(double r) {
        double k = 0.5522847498 * r;
        return new CurvePath(
                Point.of(r, 0),
                List.of(
                        new Segment.Cubic(Point.of(r, k), Point.of(k, r), Point.of(0, r)),
                        new Segment.Cubic(Point.of(-k, r), Point.of(-r, k), Point.of(-r, 0)),
                        new Segment.Cubic(Point.of(-r, -k), Point.of(-k, -r), Point.of(0, -r)),
                        new Segment.Cubic(Point.of(k, -r), Point.of(r, -k), Point.of(r, 0))),
                true);
    }

    private static Point point(Random random) {
        return Point.of(random.nextDouble() * 50, random.nextDouble() * 50);
    }

    private static double cutSeconds(CurvePath path, double speed) {
        return CutTime.estimate(List.of(path), machine(200, 0), parameters(speed, 1))
                .cutting()
                .toSeconds();
    }

    private static Motion motion(double maxCut) {
        return new Motion(Speed.mmPerSecond(200), Speed.mmPerSecond(maxCut), A, Length.ZERO);
    }

    public static Machine machine(double maxCut, double cornerDeviation) {
        Currency eur = Currency.getInstance("EUR");
        return new Machine(
                1,
                "Test bed",
                Size.mm(400, 400),
                new Beam(20, 450, Length.mm(3), Length.mm(0.15)),
                new Motion(Speed.mmPerSecond(100), Speed.mmPerSecond(maxCut), A, Length.mm(cornerDeviation)),
                Length.mm(1),
                Minutes.of(6),
                Minutes.ofSeconds(10),
                MachineCosts.unknown(eur),
                true,
                false);
    }

    static CutParameters parameters(double mmPerSecond, int passes) {
        return new CutParameters(Speed.mmPerSecond(mmPerSecond), Percent.of(100), passes, true, Length.mm(3));
    }
}
