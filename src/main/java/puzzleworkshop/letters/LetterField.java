package puzzleworkshop.letters;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a wording may ask for by its name in braces, such as {@code {tracking_link}}. */
public enum LetterField {
    CUSTOMER,
    ORDER,
    PIECES,
    SIZE,
    COPIES,
    WORKSHOP,
    WORKSHOP_ADDRESS,
    PHONE,
    EMAIL,
    PROMISED,
    /** Another day than the promised one. */
    NEW_DAY,
    /** What is still needed from the customer, as a sentence. */
    NEEDED,
    VALID_UNTIL,
    /** The customer's private link; handed out only in the letter that was written when it was made. */
    LINK,
    PRICE,
    /** What was asked for before the work begins. */
    ASKED,
    /** What is still to be paid. */
    OPEN,
    INVOICE,
    /** When the invoice is to be paid. */
    DUE,
    DAYS_LATE,
    BANK,
    CREDIT_NOTE,
    CREDITED,
    /** What is on order and waited for. */
    MATERIAL,
    CARRIER,
    TRACKING,
    TRACKING_LINK,
    /** The other orders that lie in the same parcel. */
    TOGETHER,
    /** When it can be fetched. */
    COLLECT,
    /** Since when it can be fetched. */
    READY_SINCE,
    /** What is done about a complaint, as a sentence. */
    REMEDY,
    /** What was answered to a complaint, in the words of whoever decided. */
    ANSWER;

    /** As it stands between braces. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Optional<LetterField> of(String word) {
        return Arrays.stream(values())
                .filter(field -> field.word().equals(word.strip().toLowerCase(Locale.ROOT)))
                .findFirst();
    }

    public String textKey() {
        return "letters.field." + name();
    }
}
