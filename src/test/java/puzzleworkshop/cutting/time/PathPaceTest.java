package puzzleworkshop.cutting.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.machines.Motion;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;

/**
 * The time along real cut lines against a fine model that shares nothing with the program's but the limits: points every
 * 0.005 mm or less, the radius of the bend from three of them (circumscribed circle: R = abc / 4·area, Euclid IV.5 with
 * Heron's area), the fastest speeds by v² = v₀² + 2·a·d backwards and forwards, and the time as the sum of 2·d / (v₀ + v₁).
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PathPaceTest {

    private static final double FINE_MM = 0.01;

    @ParameterizedTest
    @EnumSource(CutStyle.class)
    void the_time_of_every_style_is_within_one_percent_of_a_fine_model_from_5_to_100_mm_a_second(CutStyle style) {
        for (int pieces : new int[] {3, 8}) {
            CutPattern pattern = PatternMaker.make(
                    PatternSpec.of(Size.mm(20 * pieces, 15 * pieces), new PieceGrid(pieces, pieces), 5)
                            .withStyle(style));
            for (double acceleration : new double[] {500, 3000}) {
                for (double speed : new double[] {5, 10, 20, 50, 100}) {
                    Motion motion =
                            new Motion(Speed.mmPerSecond(200), Speed.mmPerSecond(speed), acceleration, Length.mm(0.02));
                    double ours = 0;
                    double fine = 0;
                    for (CurvePath line : pattern.inner()) {
                        ours += new PathPace(motion, speed).seconds(line);
                        fine += fineSeconds(line, motion, speed);
                    }
                    assertThat(ours)
                            .as("%s, %d a side, %.0f mm/s, %.0f mm/s²", style, pieces, speed, acceleration)
                            .isCloseTo(fine, within(fine * 0.01));
                }
            }
        }
    }

    private static double fineSeconds(CurvePath path, Motion motion, double top) {
        List<Point> points = new ArrayList<>();
        List<Double> corner = new ArrayList<>();
        points.add(path.start());
        corner.add(0.0);
        Point from = path.start();
        Point before = null;
        for (Segment segment : path.segments()) {
            int steps = (int) Math.ceil(segment.lengthMm(from) / FINE_MM) * 2;
            for (int i = 1; i <= steps; i++) {
                Point next = segment.at(from, (double) i / steps);
                if (i == 1 && before != null) {
                    double turn = turn(before, from, next);
                    corner.set(corner.size() - 1, motion.cornerSpeed(turn));
                }
                before = points.getLast();
                points.add(next);
                corner.add(Double.POSITIVE_INFINITY);
            }
            from = segment.to();
        }
        int n = points.size();
        double[] speed = new double[n];
        for (int i = 1; i < n - 1; i++) {
            boolean atCorner = Double.isFinite(corner.get(i));
            double bend =
                    atCorner ? Double.POSITIVE_INFINITY : radius(points.get(i - 1), points.get(i), points.get(i + 1));
            speed[i] = Math.min(Math.min(top, corner.get(i)), motion.bendSpeed(bend));
        }
        double twice = 2 * motion.acceleration();
        for (int i = n - 2; i > 0; i--) {
            speed[i] = Math.min(
                    speed[i],
                    Math.sqrt(
                            speed[i + 1] * speed[i + 1] + twice * points.get(i).distanceTo(points.get(i + 1))));
        }
        double seconds = 0;
        for (int i = 1; i < n; i++) {
            double distance = points.get(i - 1).distanceTo(points.get(i));
            speed[i] = Math.min(speed[i], Math.sqrt(speed[i - 1] * speed[i - 1] + twice * distance));
            double sum = speed[i - 1] + speed[i];
            seconds += sum > 0 ? 2 * distance / sum : 0;
        }
        return seconds;
    }

    private static double turn(Point a, Point b, Point c) {
        double one = Math.atan2(b.yMm() - a.yMm(), b.xMm() - a.xMm());
        double other = Math.atan2(c.yMm() - b.yMm(), c.xMm() - b.xMm());
        double turn = Math.abs(one - other);
        return turn > Math.PI ? 2 * Math.PI - turn : turn;
    }

    private static double radius(Point p, Point q, Point r) {
        double a = p.distanceTo(q);
        double b = q.distanceTo(r);
        double c = p.distanceTo(r);
        double area =
                Math.abs((q.xMm() - p.xMm()) * (r.yMm() - p.yMm()) - (q.yMm() - p.yMm()) * (r.xMm() - p.xMm())) / 2;
        return area < 1e-13 ? Double.POSITIVE_INFINITY : a * b * c / (4 * area);
    }
}
