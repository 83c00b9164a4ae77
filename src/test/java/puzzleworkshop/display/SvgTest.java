package puzzleworkshop.display;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SvgTest {

    /** Judge: decimal arithmetic of the JDK. */
    @Test
    void numbers_are_rounded_to_a_thousandth_and_written_without_exponent_or_needless_noughts() {
        Random random = new Random(Seeds.from(31));
        for (int i = 0; i < 20_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(13) - 3);
            BigDecimal exact = new BigDecimal(value).setScale(3, RoundingMode.HALF_UP);
            assertThat(new BigDecimal(Svg.n(value)).subtract(exact).abs())
                    .as("%s as %s", value, Svg.n(value))
                    .isLessThanOrEqualTo(new BigDecimal("0.001"));
            assertThat(Svg.n(value)).matches("0|-?(0|[1-9]\\d*)(\\.\\d{0,2}[1-9])?");
        }
        assertThat(Svg.n(-0.0002)).isEqualTo("0");
        assertThat(Svg.n(12.5)).isEqualTo("12.5");
        assertThat(Svg.n(-0.05)).isEqualTo("-0.05");
        assertThat(Svg.n(100)).isEqualTo("100");
        assertThat(Svg.n(9.9996)).isEqualTo("10");
    }

    @Test
    void what_people_typed_cannot_leave_its_place() {
        String drawn = Svg.of(0, 0, 10, 10, "A & B", "")
                .text(1, 2, 3, "start", "<script>'", "a")
                .image(0, 0, 1, 1, "x' onload='y")
                .markup();
        assertThat(drawn)
                .contains("A &amp; B", "&lt;script&gt;&#39;", "href='x&#39; onload=&#39;y'")
                .doesNotContain("<script>");
    }
}
