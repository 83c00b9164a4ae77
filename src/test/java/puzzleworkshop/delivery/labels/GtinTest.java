package puzzleworkshop.delivery.labels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Refused;

/** Examples of check digits: GS1 General Specifications, check digit calculations. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class GtinTest {

    @Test
    void the_check_digit_of_two_known_numbers() {
        assertThat(Gtin.checkDigit("629104150021")).isEqualTo(3);
        assertThat(Gtin.checkDigit("400638133393")).isEqualTo(1);
    }

    @Test
    void a_mistyped_digit_is_refused() {
        assertThat(new Gtin("6291041500213").digits()).hasSize(13);
        assertThatThrownBy(() -> new Gtin("6291041500223")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Gtin("629104150021")).isInstanceOf(Refused.class);
    }

    @Test
    void to_twelve_digits_the_thirteenth_is_computed_and_thirteen_are_checked() {
        assertThat(Gtin.typed("629104150021").digits()).isEqualTo("6291041500213");
        assertThat(Gtin.typed(" 4 006381 33393").digits()).isEqualTo("4006381333931");
        assertThat(Gtin.typed("6291041500213").digits()).isEqualTo("6291041500213");
        assertThatThrownBy(() -> Gtin.typed("6291041500214")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Gtin.typed("62910415002")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Gtin.typed("62910415002a")).isInstanceOf(Refused.class);
    }
}
