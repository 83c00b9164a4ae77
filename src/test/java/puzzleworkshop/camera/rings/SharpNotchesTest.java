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
        double[] followed = SharpNotches.followed(ring);
        assertThat(least(followed, 50, 40)).isLessThan(0.4);
        assertThat(least(followed, 44, 16)).as("its sides stay").isLessThan(0.1);
        assertThat(Ring.area(followed)).isBetween(Ring.area(ring) - 4, Ring.area(ring));
    }

    @Test
    void outer_corners_right_inner_corners_and_round_bays_stay_as_they_are() {
        double[] step = Ring.spaced(new double[] {0, 0, 90, 0, 90, 30, 40, 30, 40, 70, 20, 30, 0, 70}, Ring.SPACING);
        double[] followed = SharpNotches.followed(step);
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
        assertThat(SharpNotches.followed(round)).isEqualTo(round);
    }
}
