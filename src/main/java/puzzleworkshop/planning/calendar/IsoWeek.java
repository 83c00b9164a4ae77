package puzzleworkshop.planning.calendar;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Locale;

/**
 * A week as ISO 8601 counts them: Monday to Sunday, belonging to the year that holds its Thursday.
 *
 * @param year of the week, which may differ from the calendar year around New Year
 * @param week 1 to 53
 */
public record IsoWeek(int year, int week) implements Comparable<IsoWeek> {

    public static IsoWeek of(LocalDate day) {
        LocalDate thursday =
                day.plusDays(DayOfWeek.THURSDAY.getValue() - day.getDayOfWeek().getValue());
        return new IsoWeek(thursday.getYear(), (thursday.getDayOfYear() - 1) / 7 + 1);
    }

    /** The Monday. */
    public LocalDate firstDay() {
        LocalDate inFirstWeek = LocalDate.of(year, 1, 4);
        return inFirstWeek.minusDays(inFirstWeek.getDayOfWeek().getValue() - 1).plusWeeks(week - 1L);
    }

    /** The Sunday. */
    public LocalDate lastDay() {
        return firstDay().plusDays(6);
    }

    public IsoWeek next() {
        return of(firstDay().plusWeeks(1));
    }

    public IsoWeek previous() {
        return of(firstDay().minusWeeks(1));
    }

    @Override
    public int compareTo(IsoWeek other) {
        return firstDay().compareTo(other.firstDay());
    }

    /** {@code 2026-W53}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%04d-W%02d", year, week);
    }
}
