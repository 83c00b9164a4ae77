package puzzleworkshop.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class QuantitiesTest {

    /** 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). */
    @Test
    void an_inch_is_25_4_mm() {
        assertThat(Length.inches(13).mm()).isCloseTo(330.2, within(1e-12));
        assertThat(UnitSystem.INCHES.valueOf(Length.mm(254))).isEqualTo(10);
        assertThat(UnitSystem.INCHES.length(19).mm()).isCloseTo(482.6, within(1e-12));
    }

    @Test
    void a_size_grows_by_its_border_on_every_side() {
        assertThat(Size.mm(200, 300).grownBy(Length.mm(3 + 8))).isEqualTo(Size.mm(222, 322));
        assertThat(Size.mm(200, 300).perimeter()).isEqualTo(Length.mm(1000));
    }

    @Test
    void a_turned_sheet_of_paper_fits_upright_but_a_longer_one_does_not() {
        assertThat(Size.mm(297, 210).fitsUpright(Size.mm(210, 297))).isTrue();
        assertThat(Size.mm(298, 210).fitsUpright(Size.mm(210, 297))).isFalse();
    }

    @Test
    void speeds_show_both_ways() {
        assertThat(Speed.mmPerMinute(300).mmPerSecond()).isEqualTo(5);
        assertThat(Speed.mmPerSecond(5).toMmPerMinute()).isEqualTo(300);
    }

    @Test
    void ninety_minutes_at_20_an_hour_cost_30() {
        assertThat(HourlyRate.of(Money.of("20", "EUR")).forTime(Minutes.of(90)).amount())
                .isEqualByComparingTo(BigDecimal.valueOf(30));
    }

    @Test
    void impossible_quantities_are_refused() {
        assertThatThrownBy(() -> Length.mm(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Size.mm(-1, 5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Speed.mmPerMinute(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Area.mm2(-1)).isInstanceOf(IllegalArgumentException.class);
    }
}
