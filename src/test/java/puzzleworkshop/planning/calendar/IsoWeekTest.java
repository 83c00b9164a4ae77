package puzzleworkshop.planning.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.temporal.IsoFields;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class IsoWeekTest {

    /** ISO 8601: the week belongs to the year of its Thursday. */
    @Test
    void weeks_around_new_year_are_those_of_the_standard() {
        assertThat(IsoWeek.of(LocalDate.of(2026, 1, 1))).hasToString("2026-W01");
        assertThat(IsoWeek.of(LocalDate.of(2027, 1, 1))).hasToString("2026-W53");
        assertThat(IsoWeek.of(LocalDate.of(2024, 12, 30))).hasToString("2025-W01");
    }

    @Test
    void every_day_of_130_years_is_in_the_week_that_java_time_says() {
        LocalDate end = LocalDate.of(2100, 1, 1);
        for (LocalDate day = LocalDate.of(1970, 1, 1); day.isBefore(end); day = day.plusDays(1)) {
            IsoWeek week = IsoWeek.of(day);
            assertThat(week.year()).as("%s", day).isEqualTo(day.get(IsoFields.WEEK_BASED_YEAR));
            assertThat(week.week()).as("%s", day).isEqualTo(day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
            assertThat(day).isBetween(week.firstDay(), week.lastDay());
        }
    }

    @Test
    void the_week_after_the_53rd_is_the_first() {
        assertThat(new IsoWeek(2026, 53).next()).isEqualTo(new IsoWeek(2027, 1));
        assertThat(new IsoWeek(2027, 1).previous()).isEqualTo(new IsoWeek(2026, 53));
    }
}
