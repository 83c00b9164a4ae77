package puzzleworkshop.display;

import java.time.chrono.IsoChronology;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Locale;

/**
 * In which order a person writes a day in figures: 12/11 is a day in November to most and a day in December to some. It
 * goes by the language of the browser, as the Common Locale Data Repository has it.
 */
enum DayOrder {
    DAY_FIRST("dd/MM/yyyy", "d/M/yyyy", "d.M.yyyy", "yyyy-MM-dd", "d MMM yyyy", "d MMMM yyyy", "d MMM", "d/M", "d.M."),
    MONTH_FIRST(
            "MM/dd/yyyy",
            "M/d/yyyy",
            "d.M.yyyy",
            "yyyy-MM-dd",
            "MMM d yyyy",
            "MMM d, yyyy",
            "MMMM d, yyyy",
            "d MMM yyyy",
            "MMM d",
            "M/d",
            "d.M."),
    YEAR_FIRST("yyyy-MM-dd", "yyyy/MM/dd", "d.M.yyyy", "d MMM yyyy", "d MMMM yyyy", "d MMM", "d.M.");

    private final List<String> formats;

    DayOrder(String... formats) {
        this.formats = List.of(formats);
    }

    /** What is read, the first of them also for showing; no two of them read one text as two days. */
    List<String> formats() {
        return formats;
    }

    static DayOrder of(Locale browser) {
        String pattern = DateTimeFormatterBuilder.getLocalizedDateTimePattern(
                FormatStyle.SHORT, null, IsoChronology.INSTANCE, browser);
        int day = pattern.indexOf('d');
        int month = Math.max(pattern.indexOf('M'), pattern.indexOf('L'));
        int year = Math.max(pattern.indexOf('y'), pattern.indexOf('u'));
        if (year >= 0 && year < day && year < month) {
            return YEAR_FIRST;
        }
        return month < day ? MONTH_FIRST : DAY_FIRST;
    }
}
