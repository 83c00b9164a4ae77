package puzzleworkshop.display.fields;

import com.vaadin.flow.component.datepicker.DatePicker;
import com.vaadin.flow.server.VaadinSession;
import java.time.LocalDate;
import java.time.chrono.IsoChronology;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import puzzleworkshop.display.Texts;

/**
 * A field for a day: the week begins on Monday, a day may be typed in the usual ways of writing it, in the order of the
 * browser's language, and the weekday stands below, so that a day read in another order is seen. What cannot be read stays
 * in the field with a sentence beside it. It never guesses: a calendar that opens while one types would take its marked
 * day, today, for a word it does not know, so the calendar opens on its button or the down key only.
 */
public class DayField extends DatePicker {

    private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Texts.LOCALE);

    private final DatePickerI18n words = new DatePickerI18n();

    public DayField() {
        this("");
    }

    public DayField(String label, LocalDate day) {
        this(label);
        setValue(day);
    }

    public DayField(String label) {
        setLabel(label);
        setLocale(Texts.LOCALE);
        setAutoOpen(false);
        words.setFirstDayOfWeek(1);
        List<String> formats = Order.of(browser()).formats();
        words.setDateFormats(
                formats.getFirst(), formats.subList(1, formats.size()).toArray(String[]::new));
        words.setBadInputErrorMessage(getTranslation("display.day.unreadable"));
        words.setMinErrorMessage(getTranslation("display.day.past"));
        setI18n(words);
        addValueChangeListener(event -> setHelperText(
                Optional.ofNullable(event.getValue()).map(WEEKDAY::format).orElse("")));
    }

    private static Locale browser() {
        return Optional.ofNullable(VaadinSession.getCurrent())
                .map(session -> session.getBrowser().getLocale())
                .orElse(Texts.LOCALE);
    }

    /** Days before it are refused, beside the field. */
    public void notBefore(LocalDate first) {
        if (!first.equals(getMin())) {
            setMin(first);
        }
    }

    /** Marks it where a day is needed and none can be read, and goes there. */
    public void refuse() {
        setErrorMessage(getTranslation("display.day.unreadable"));
        setInvalid(true);
        focus();
    }

    /** Whether it is empty or holds a day that may be taken. */
    public boolean isFit() {
        return !isInputUnparsable()
                && !(getValue() != null && getMin() != null && getValue().isBefore(getMin()));
    }

    /**
     * In which order a person writes a day in figures: 12/11 is a day in November to most and a day in December to some. It
     * goes by the language of the browser, as the Common Locale Data Repository has it.
     */
    enum Order {
        DAY_FIRST(
                "dd/MM/yyyy",
                "d/M/yyyy",
                "d.M.yyyy",
                "yyyy-MM-dd",
                "d MMM yyyy",
                "d MMMM yyyy",
                "d MMM",
                "d/M",
                "d.M."),
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

        Order(String... formats) {
            this.formats = List.of(formats);
        }

        /** What is read, the first of them also for showing; no two of them read one text as two days. */
        List<String> formats() {
            return formats;
        }

        static Order of(Locale browser) {
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
}
