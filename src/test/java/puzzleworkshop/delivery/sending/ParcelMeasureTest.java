package puzzleworkshop.delivery.sending;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Length;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ParcelMeasureTest {

    /** 40 × 30 × 20 cm: the carriers' usual example (common rule; computed by hand). */
    private final ParcelMeasure box = ParcelMeasure.of(2500, Length.mm(300), Length.mm(200), Length.mm(400));

    @Test
    void length_and_girth_is_the_longest_side_and_twice_the_two_others() {
        assertThat(box.lengthAndGirth().mm()).isEqualTo(1400);
    }

    @Test
    void volumetric_mass_by_the_two_common_divisors() {
        assertThat(box.volumetricGrams(5000)).isCloseTo(4800, within(1e-9));
        assertThat(box.volumetricGrams(6000)).isCloseTo(4000, within(1e-9));
    }

    @Test
    void what_counts_is_the_greater_of_mass_and_volume() {
        assertThat(box.chargedGrams(6000)).isCloseTo(4000, within(1e-9));
        assertThat(ParcelMeasure.of(6100, box.longest(), box.middle(), box.shortest())
                        .chargedGrams(5000))
                .isEqualTo(6100);
    }
}
