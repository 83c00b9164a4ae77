package puzzleworkshop.camera.rings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class StretchTest {

    /** Three points look up, two to the right. */
    private final Stretch stretch = new Stretch(new double[] {0, -1, 0, -1, 0, -1, 1, 0, 1, 0}, 0.9);

    @Test
    void what_lies_around_a_corner_counts_nothing() {
        double[][] cuts = {{1}, {2}, {3}, {100}, {100}};
        // 2 weighs twice as much as 1 and 3; 3 has the corner beside it
        assertThat(stretch.mean(cuts, 1, 1)[0]).isCloseTo(2, within(1e-12));
        assertThat(stretch.mean(cuts, 2, 1)[0]).isCloseTo(8 / 3.0, within(1e-12));
        assertThat(stretch.median(new double[] {1, 7, 3, 100, 100}, 1, 4, 1)).isEqualTo(3);
    }

    @Test
    void what_is_missing_is_no_value() {
        double[] values = {1, Double.NaN, 3, Double.NaN, Double.NaN};
        assertThat(stretch.median(values, 1, 1, 2)).isEqualTo(3);
        assertThat(stretch.median(values, 1, 1, 3)).isNaN();
        double[][] cuts = {{1}, {Double.NaN}, {3}, {5}, {5}};
        assertThat(stretch.mean(cuts, 0, 1, 1)).isEqualTo(2);
        assertThat(stretch.mean(cuts, 0, 0, 1)).isNaN();
    }
}
