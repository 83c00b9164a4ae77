package puzzleworkshop.pattern.smallparts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.MinimumBoundingCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import puzzleworkshop.pattern.smallparts.SmallPartsCylinder.Answer;

/**
 * What is said not to fit, put into the cylinder of 16 CFR 1501.4 by trying: random orientations, the place in plan from
 * JTS's smallest circle around it, every corner looked at by itself.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SmallPartsByTryingTest {

    private static final double RADIUS = 15.875;
    private static final int PLATES = 60;
    private static final int TURNS = 1_500;

    @Test
    void nothing_that_is_said_not_to_fit_goes_in_by_trying() {
        SplittableRandom random = new SplittableRandom(41);
        int out = 0;
        for (int i = 0; i < PLATES; i++) {
            double[][] plan = plan(random);
            double thickness = 2 + random.nextDouble(4);
            TurnedSolid plate = TurnedSolid.plate(plan, thickness);
            if (SmallPartsCylinder.test(plate, 0, 0, 60_000) != Answer.DOES_NOT_FIT) {
                continue;
            }
            out++;
            for (int turn = 0; turn < TURNS; turn++) {
                assertThat(goesIn(plan, thickness, random)).isFalse();
            }
        }
        assertThat(out).isBetween(PLATES / 5, PLATES * 4 / 5);
    }

    /** The trying itself finds what fits: else the test above could not fail. */
    @Test
    void what_fits_easily_goes_in_by_trying() {
        SplittableRandom random = new SplittableRandom(5);
        double[][] small = {{0, 0}, {18, 0}, {18, 14}, {0, 14}};
        boolean went = false;
        for (int turn = 0; turn < TURNS && !went; turn++) {
            went = goesIn(small, 3, random);
        }
        assertThat(went).isTrue();
    }

    private static double[][] plan(SplittableRandom random) {
        int corners = 4 + random.nextInt(9);
        double longer = 17 + random.nextDouble(13);
        double shorter = 15 + random.nextDouble(5);
        double[][] plan = new double[corners][];
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * (i + random.nextDouble(0.7)) / corners;
            plan[i] = new double[] {longer * Math.cos(angle), shorter * Math.sin(angle)};
        }
        return plan;
    }

    private static boolean goesIn(double[][] plan, double thickness, SplittableRandom random) {
        double[][] turned = turned(plan, thickness, random);
        Coordinate[] seen = new Coordinate[turned.length];
        double highest = Double.NEGATIVE_INFINITY;
        for (int n = 0; n < turned.length; n++) {
            seen[n] = new Coordinate(turned[n][0], turned[n][1]);
            highest = Math.max(highest, turned[n][2]);
        }
        MinimumBoundingCircle circle =
                new MinimumBoundingCircle(new GeometryFactory().createMultiPointFromCoords(seen));
        double room = RADIUS - circle.getRadius();
        if (room < 0) {
            return false;
        }
        for (int step = 0; step <= 8; step++) {
            // as far on the deep side, x, as the wall lets it, and less far
            double shift = room * step / 8 - circle.getCentre().x;
            if (holds(turned, shift, -circle.getCentre().y, highest)) {
                return true;
            }
        }
        return false;
    }

    /** The bottom falls by 45 degrees from 1 in under the rim at one side to 2.25 in at the other. */
    private static boolean holds(double[][] corners, double dx, double dy, double highest) {
        for (double[] corner : corners) {
            double x = corner[0] + dx;
            double under = highest - corner[2];
            if (Math.hypot(x, corner[1] + dy) > RADIUS || under > 25.4 + RADIUS + x) {
                return false;
            }
        }
        return true;
    }

    /** Turned by a random rotation, from two normals made square to each other (Gram and Schmidt). */
    private static double[][] turned(double[][] plan, double thickness, SplittableRandom random) {
        double[] a = unit(normal(random));
        double[] b = normal(random);
        double along = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        b = unit(new double[] {b[0] - along * a[0], b[1] - along * a[1], b[2] - along * a[2]});
        double[] c = {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
        double[][] all = new double[2 * plan.length][3];
        for (int n = 0; n < all.length; n++) {
            double[] corner = plan[n / 2];
            double z = n % 2 * thickness;
            for (int k = 0; k < 3; k++) {
                all[n][k] = a[k] * corner[0] + b[k] * corner[1] + c[k] * z;
            }
        }
        return all;
    }

    private static double[] normal(SplittableRandom random) {
        return new double[] {gauss(random), gauss(random), gauss(random)};
    }

    private static double gauss(SplittableRandom random) {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }

    private static double[] unit(double[] v) {
        double length = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
        return new double[] {v[0] / length, v[1] / length, v[2] / length};
    }
}
