package puzzleworkshop.letters;

import java.time.LocalDate;
import java.util.Optional;
import puzzleworkshop.measure.Refused;

/**
 * When the three payment reminders are written. How long one waits is the owner's choice; what law asks of a reminder, and
 * fees and interest, are for local rules and are not reckoned here.
 *
 * @param first days after the day on which the invoice was to be paid
 * @param second days after the first reminder
 * @param last days after the second
 */
public record ReminderSteps(int first, int second, int last) {

    private static final int MOST = 365;

    public ReminderSteps {
        if (Math.min(first, Math.min(second, last)) < 1 || Math.max(first, Math.max(second, last)) > MOST) {
            throw new Refused("letters.reminders.range", MOST);
        }
    }

    /** A reminder and the day from which it is due. */
    public record Due(LetterKind kind, LocalDate from) {}

    /** One that was written, and when. */
    public record Written(LetterKind kind, LocalDate on) {}

    /** The next reminder; empty after the last one. */
    public Optional<Due> next(LocalDate dueOn, Optional<Written> latest) {
        if (latest.isEmpty()) {
            return Optional.of(new Due(LetterKind.FIRST_REMINDER, dueOn.plusDays(first)));
        }
        return latest.get()
                .kind()
                .nextReminder()
                .map(kind ->
                        new Due(kind, latest.get().on().plusDays(kind == LetterKind.SECOND_REMINDER ? second : last)));
    }
}
