package puzzleworkshop.camera.rings;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SharpNotchesTest {

    private static double least(double[] ring, double x, double y) {
        return Lines.fromRing(ring, x, y);
    }

    @Test
    void a_notch_that_blur_has_filled_is_followed_to_where_its_sides_meet() {
        // a wedge of 28 degrees, 40 deep, whose last 3 mm are filled
        double[] filled = {0, 0, 40, 0, 49.25, 37, 50.75, 37, 60, 0, 100, 0, 100, 80, 0, 80};
        double[] ring = Ring.spaced(filled, Ring.SPACING);
        assertThat(least(ring, 50, 40)).isGreaterThan(2.5);
        double[] followed = SharpNotches.followed(ring, (x, y) -> 0);
        assertThat(least(followed, 50, 40)).isLessThan(0.4);
        assertThat(least(followed, 44, 16)).as("its sides stay").isLessThan(0.1);
        assertThat(Ring.area(followed)).isBetween(Ring.area(ring) - 4, Ring.area(ring));
    }

    @Test
    void outer_corners_right_inner_corners_and_round_bays_stay_as_they_are() {
        double[] step = Ring.spaced(new double[] {0, 0, 90, 0, 90, 30, 40, 30, 40, 70, 20, 30, 0, 70}, Ring.SPACING);
        double[] followed = SharpNotches.followed(step, (x, y) -> 0);
        for (double[] corner : new double[][] {{90, 0}, {40, 30}, {40, 70}, {0, 70}}) {
            assertThat(least(followed, corner[0], corner[1])).isLessThan(0.5);
        }
        double[] bay = new double[2 * 60];
        for (int i = 0; i < 57; i++) {
            double a = Math.PI * i / 56;
            bay[2 * i] = 50 - 12 * Math.cos(a);
            bay[2 * i + 1] = 12 * Math.sin(a);
        }
        System.arraycopy(new double[] {90, 0, 90, 60, 0, 60}, 0, bay, 114, 6);
        double[] round = Ring.spaced(bay, Ring.SPACING);
        assertThat(SharpNotches.followed(round, (x, y) -> 0)).isEqualTo(round);
    }

    @Test
    void a_notch_beside_a_round_knob_is_followed_along_the_round_side_as_well() {
        // a knob of 5 mm whose middle stands 3.5 mm off the edge, both notches filled by a wall of 2 mm
        double lean = Math.asin(0.7);
        double[] knob = new double[2 * 41];
        for (int i = 0; i <= 40; i++) {
            double a = Math.PI + lean - 0.2 - (Math.PI + 2 * lean - 0.4) * i / 40;
            knob[2 * i] = 50 + 5 * Math.cos(a);
            knob[2 * i + 1] = -3.5 - 5 * Math.sin(a);
        }
        double half = 5 * Math.cos(lean);
        double[] filled = new double[knob.length + 12];
        System.arraycopy(new double[] {0, 0, 50 - half - 1.2, 0}, 0, filled, 0, 4);
        System.arraycopy(knob, 0, filled, 4, knob.length);
        System.arraycopy(new double[] {50 + half + 1.2, 0, 100, 0, 100, 60, 0, 60}, 0, filled, 4 + knob.length, 8);
        double[] ring = Ring.spaced(filled, Ring.SPACING);
        double[] followed = SharpNotches.followed(ring, (x, y) -> 2);
        for (double x : new double[] {50 - half, 50 + half}) {
            assertThat(least(ring, x, 0)).isGreaterThan(0.5);
            assertThat(least(followed, x, 0)).isLessThan(0.25);
        }
        assertThat(least(followed, 50, -8.5)).as("the knob stays").isLessThan(0.1);
    }
}
