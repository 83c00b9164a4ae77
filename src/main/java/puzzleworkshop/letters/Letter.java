package puzzleworkshop.letters;

import java.time.Instant;
import java.util.Optional;
import puzzleworkshop.letters.mail.MailState;
import puzzleworkshop.measure.OrderId;

/**
 * A letter that was written, as it is kept with its order. A private link in it is not kept.
 *
 * @param to e-mail address, telephone or empty, as the customer's contact stood
 * @param attached names of the papers that went with it, separated by commas; may be empty
 * @param mail how it stands in the outbox; only of letters that the program itself sends
 */
public record Letter(
        long id,
        OrderId order,
        String orderNumber,
        LetterKind kind,
        Way way,
        String to,
        String subject,
        String body,
        String attached,
        Instant at,
        String by,
        Optional<Mail> mail) {

    /** How a letter left the workshop. */
    public enum Way {
        /** By the person: copied, shared, or with their own mail program. */
        BY_HAND,
        /** By the program, from its outbox. */
        MAIL;

        public String textKey() {
            return "letters.way." + name();
        }
    }

    /**
     * @param tries so far
     * @param nextTry when it waits
     * @param fault what the last try met with; may be empty
     */
    public record Mail(
            MailState state, String messageId, int tries, Instant nextTry, Optional<Instant> sentAt, String fault) {}
}
