package puzzleworkshop.display;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Currency;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.support.MetricHouse;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FormatterTest {

    private record InchHouse(LocalDate today) implements HouseUnits {

        @Override
        public UnitSystem units() {
            return UnitSystem.INCHES;
        }

        @Override
        public Currency currency() {
            return Currency.getInstance("USD");
        }

        @Override
        public ZoneId zone() {
            return ZoneId.of("UTC");
        }
    }

    @Test
    void much_wood_reads_in_square_metres() {
        Formatter figures = MetricHouse.figures();
        assertThat(figures.largeArea(Area.mm2(4_754_380))).isEqualTo("4.75 m²");
        assertThat(figures.largeArea(Area.mm2(1_200_000))).isEqualTo("1.20 m²");
        assertThat(figures.largeArea(Area.ZERO)).isEqualTo("0.00 m²");
        assertThat(figures.largeArea(Area.mm2(3_000))).isEqualTo("under 0.01 m²");
    }

    /** A square metre is 10.764 square feet: NIST Special Publication 811 (2008), appendix B.8, square foot 9.290 304 E-02 m². */
    @Test
    void much_wood_reads_in_square_feet_where_lengths_are_inches() {
        Formatter figures = new Formatter(new Texts(), new InchHouse(LocalDate.of(2026, 12, 3)));
        assertThat(figures.largeArea(Area.mm2(1_000_000))).isEqualTo("10.8 ft²");
        assertThat(figures.largeArea(Area.mm2(92_903.04))).isEqualTo("1.0 ft²");
    }
}
