package puzzleworkshop.display;

import com.vaadin.flow.component.datepicker.DatePicker;
import java.time.LocalDate;

/**
 * A field for a day: the week begins on Monday, a day may be typed in the usual ways of writing it, and what cannot be
 * read stays in the field with a sentence beside it. It never guesses: a calendar that opens while one types would take
 * its marked day, today, for a word it does not know, so the calendar opens on its button or the down key only.
 */
public class DayField extends DatePicker {

    private final DatePickerI18n words = new DatePickerI18n();

    public DayField() {
        this("");
    }

    public DayField(String label) {
        setLabel(label);
        setLocale(Texts.LOCALE);
        setAutoOpen(false);
        words.setFirstDayOfWeek(1);
        words.setDateFormats(
                "dd/MM/yyyy", "d.M.yyyy", "yyyy-MM-dd", "d MMM yyyy", "d MMMM yyyy", "d MMM", "d/M", "d.M.");
        words.setBadInputErrorMessage(getTranslation("display.day.unreadable"));
        words.setMinErrorMessage(getTranslation("display.day.past"));
        setI18n(words);
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
}
