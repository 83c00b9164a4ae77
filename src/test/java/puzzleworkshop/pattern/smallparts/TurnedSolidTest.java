package puzzleworkshop.pattern.smallparts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import puzzleworkshop.pattern.smallparts.SmallPartsCylinder.Answer;

/** A plate against the same solid given as its points one by one, and its outline from above against JTS's convex hull. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TurnedSolidTest {

    private static final int CASES = 300;
    private static final double NOTHING = 1e-9;

    @Test
    void a_plate_reaches_as_far_as_its_points_and_is_seen_from_above_as_their_convex_hull() {
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < CASES; i++) {
            double[][] plan = convex(random, 3 + random.nextInt(12), 20);
            TurnedSolid plate = TurnedSolid.plate(plan, 3);
            TurnedSolid points = TurnedSolid.of(bothSides(plan, 3));
            double[] turn = i % 10 == 0 ? new double[] {1, random.nextInt(2), 0, 0} : anyTurn(random);
            plate.turnTo(turn);
            points.turnTo(turn);
            assertThat(plate.reach()).isCloseTo(points.reach(), within(NOTHING));
            assertThat(plate.highest()).isCloseTo(points.highest(), within(NOTHING));
            assertThat(plate.height()).isCloseTo(points.height(), within(NOTHING));
            assertThat(plate.leftMost()).isCloseTo(points.leftMost(), within(NOTHING));
            assertThat(plate.rightMost()).isCloseTo(points.rightMost(), within(NOTHING));
            assertThat(plate.width()).isCloseTo(points.width(), within(NOTHING));
            assertThat(plate.leastSum()).isCloseTo(points.leastSum(), within(NOTHING));
            assertThat(hull(plate)).isEqualTo(hull(points));
            assertThat(plate.seenFromAbove()).isLessThanOrEqualTo(2 * plan.length);
            if (i % 10 != 0) {
                assertThat(plate.seenFromAbove()).isEqualTo(plan.length + 2);
            }
        }
    }

    /** Where both decide they say the same: half the orientations of a plate tell what all of them tell. */
    @Test
    void a_plate_fits_the_cylinder_exactly_when_its_points_do() {
        SplittableRandom random = new SplittableRandom(8);
        Set<Answer> seen = new HashSet<>();
        for (int i = 0; i < CASES / 3; i++) {
            double[][] plan = convex(random, 4 + random.nextInt(8), 17 + random.nextDouble(12));
            double thickness = 2 + random.nextDouble(6);
            Answer asPlate = SmallPartsCylinder.test(TurnedSolid.plate(plan, thickness), 0, 0.1, 100_000);
            Answer asPoints = SmallPartsCylinder.test(TurnedSolid.of(bothSides(plan, thickness)), 0, 0.1, 200_000);
            if (asPoints != Answer.UNSURE && asPlate != Answer.UNSURE) {
                assertThat(asPlate).isEqualTo(asPoints);
            }
            seen.add(asPlate);
        }
        assertThat(seen).contains(Answer.FITS, Answer.DOES_NOT_FIT);
    }

    /** Corners on an ellipse, anticlockwise. */
    private static double[][] convex(SplittableRandom random, int corners, double radius) {
        double[][] plan = new double[corners][];
        double flat = 0.6 + random.nextDouble(0.4);
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * (i + random.nextDouble(0.8)) / corners;
            plan[i] = new double[] {50 + radius * Math.cos(angle), 20 + flat * radius * Math.sin(angle)};
        }
        return plan;
    }

    private static double[][] bothSides(double[][] plan, double thickness) {
        double[][] corners = new double[2 * plan.length][];
        for (int i = 0; i < plan.length; i++) {
            corners[2 * i] = new double[] {plan[i][0], plan[i][1], 0};
            corners[2 * i + 1] = new double[] {plan[i][0], plan[i][1], thickness};
        }
        return corners;
    }

    private static double[] anyTurn(SplittableRandom random) {
        return new double[] {
            random.nextDouble(-1, 1), random.nextDouble(-1, 1), random.nextDouble(-1, 1), random.nextDouble(-1, 1)
        };
    }

    /** To a thousandth of a millimetre, so that corners of a hull in line do not count. */
    private static double hull(TurnedSolid solid) {
        Coordinate[] all = new Coordinate[solid.seenFromAbove()];
        for (int n = 0; n < all.length; n++) {
            all[n] = new Coordinate(solid.x()[n], solid.y()[n]);
        }
        double area = new ConvexHull(all, new GeometryFactory()).getConvexHull().getArea();
        return Math.rint(area * 1e6) / 1e6;
    }
}
