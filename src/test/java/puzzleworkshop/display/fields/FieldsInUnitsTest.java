package puzzleworkshop.display.fields;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.vaadin.flow.component.textfield.TextField;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.support.Seeds;

/** What is shown in few digits is not changed by being shown, and a day is read in the order of whoever types it. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class FieldsInUnitsTest {

    @ParameterizedTest
    @EnumSource
    void a_length_nobody_touches_comes_back_to_the_last_bit(UnitSystem units) {
        long seed = Seeds.from(15);
        Random random = new Random(seed);
        for (int i = 0; i < 2000; i++) {
            Length length = Length.mm(random.nextInt(4) == 0 ? random.nextInt(700) : random.nextDouble() * 3000);
            LengthField field = new LengthField("width", units);
            field.setValue(length);
            assertThat(field.getValue()).as("seed %d, %s", seed, length).isEqualTo(length);
            field.setInvalid(true);
            field.setReadOnly(true);
            assertThat(field.getValue()).as("seed %d, %s", seed, length).isEqualTo(length);
        }
    }

    /** 620 mm, 3 mm and 1 mm are 24.409…, 0.118… and 0.039… inches (1 in = 25.4 mm exactly). */
    @Test
    void bed_gap_and_limit_of_the_bow_stay_what_they_are_in_a_house_of_inches() {
        for (double mm : new double[] {620, 3, 1, 0.15, 5.5}) {
            LengthField field = new LengthField("", UnitSystem.INCHES);
            field.setValue(Length.mm(mm));
            assertThat(field.getValue()).isEqualTo(Length.mm(mm));
        }
    }

    @Test
    void a_refused_length_is_not_red_any_more_once_another_is_typed() {
        LengthField field = new LengthField("", UnitSystem.MILLIMETRES);
        TextField text = (TextField) field.getChildren().findFirst().orElseThrow();
        text.setValue("0");
        field.setInvalid(true);
        text.setValue("abc");
        assertThat(field.isInvalid()).isTrue();
        text.setValue("400");
        assertThat(field.isInvalid()).isFalse();
        assertThat(text.isInvalid()).isFalse();
    }

    @Test
    void what_is_typed_counts_and_typing_the_old_figure_again_is_no_change() {
        LengthField field = new LengthField("", UnitSystem.INCHES);
        field.setValue(Length.mm(3));
        TextField text = (TextField) field.getChildren().findFirst().orElseThrow();
        assertThat(text.getValue()).isEqualTo("0.118");
        text.setValue("0.12");
        assertThat(field.getValue().mm()).isCloseTo(0.12 * 25.4, within(1e-12));
        text.setValue("3 mm");
        assertThat(field.getValue()).isEqualTo(Length.mm(3));
        text.setValue("0.118");
        assertThat(field.getValue()).isEqualTo(Length.mm(3));
        text.setValue("abc");
        assertThat(field.getValue()).isNull();
    }

    /** The orders of the Common Locale Data Repository, as written in these countries. */
    @Test
    void a_day_is_read_in_the_order_of_the_browsers_language() {
        assertThat(DayField.Order.of(Locale.US)).isEqualTo(DayField.Order.MONTH_FIRST);
        assertThat(DayField.Order.of(Locale.UK)).isEqualTo(DayField.Order.DAY_FIRST);
        assertThat(DayField.Order.of(Locale.GERMANY)).isEqualTo(DayField.Order.DAY_FIRST);
        assertThat(DayField.Order.of(Locale.FRANCE)).isEqualTo(DayField.Order.DAY_FIRST);
        assertThat(DayField.Order.of(Locale.of("sv", "SE"))).isEqualTo(DayField.Order.YEAR_FIRST);
        assertThat(DayField.Order.of(Locale.JAPAN)).isEqualTo(DayField.Order.YEAR_FIRST);
        assertThat(DayField.Order.of(Locale.of("hu", "HU"))).isEqualTo(DayField.Order.YEAR_FIRST);
        assertThat(DayField.Order.of(Locale.ROOT)).isNotNull();
    }

    @ParameterizedTest
    @EnumSource
    void no_text_is_read_as_two_days(DayField.Order order) {
        LocalDate day = LocalDate.of(2026, 1, 1);
        for (int i = 0; i < 365; i++, day = day.plusDays(1)) {
            for (String format : order.formats()) {
                if (!format.contains("y")) {
                    continue;
                }
                String written = day.format(DateTimeFormatter.ofPattern(format, Texts.LOCALE));
                Set<LocalDate> read = new HashSet<>();
                for (String other : order.formats()) {
                    if (other.contains("y")) {
                        read(written, other).forEach(read::add);
                    }
                }
                assertThat(read).as(written + " in " + order).containsExactly(day);
            }
        }
    }

    private static List<LocalDate> read(String text, String format) {
        try {
            return List.of(LocalDate.parse(text, DateTimeFormatter.ofPattern(format, Texts.LOCALE)));
        } catch (DateTimeParseException another) {
            return List.of();
        }
    }
}
