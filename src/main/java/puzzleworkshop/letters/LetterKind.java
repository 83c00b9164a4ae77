package puzzleworkshop.letters;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** Every message that the program can write to a customer, in the order in which an order meets them. */
public enum LetterKind {
    QUOTE(true, LetterField.PRICE, LetterField.VALID_UNTIL, LetterField.LINK),
    PROOF_READY(false, LetterField.LINK),
    PICTURE_WANTED(false),
    APPROVAL_WANTED(false),
    PAYMENT_AWAITED(true, LetterField.ASKED, LetterField.BANK),
    MATERIAL_AWAITED(false, LetterField.MATERIAL),
    NEW_DAY(false, LetterField.NEW_DAY, LetterField.NEEDED),
    ON_TIME(false),
    READY_TO_COLLECT(false, LetterField.COLLECT, LetterField.TOGETHER),
    /** It waits longer than was agreed. */
    COLLECT_REMINDER(false, LetterField.TOGETHER, LetterField.COLLECT, LetterField.READY_SINCE),
    ON_ITS_WAY(false, LetterField.TOGETHER, LetterField.CARRIER, LetterField.TRACKING, LetterField.TRACKING_LINK),
    INVOICE(true, LetterField.INVOICE, LetterField.PRICE, LetterField.OPEN, LetterField.DUE, LetterField.BANK),
    CREDIT_NOTE(true, LetterField.CREDIT_NOTE, LetterField.CREDITED, LetterField.INVOICE),
    FIRST_REMINDER(true, reminding()),
    SECOND_REMINDER(true, reminding()),
    LAST_REMINDER(true, reminding()),
    THANK_YOU(false),
    /** What is done about what the customer found wrong. */
    COMPLAINT_ANSWER(false, LetterField.REMEDY, LetterField.ANSWER);

    private static final Set<LetterField> ALWAYS = Collections.unmodifiableSet(EnumSet.of(
            LetterField.CUSTOMER,
            LetterField.ORDER,
            LetterField.PIECES,
            LetterField.SIZE,
            LetterField.COPIES,
            LetterField.WORKSHOP,
            LetterField.WORKSHOP_ADDRESS,
            LetterField.PHONE,
            LetterField.EMAIL,
            LetterField.PROMISED));

    private final boolean money;
    private final Set<LetterField> own;

    LetterKind(boolean money, LetterField... own) {
        this.money = money;
        this.own = Set.of(own);
    }

    private static LetterField[] reminding() {
        return new LetterField[] {
            LetterField.INVOICE, LetterField.OPEN, LetterField.DUE, LetterField.DAYS_LATE, LetterField.BANK
        };
    }

    /** Fields that its wording may use. */
    public Set<LetterField> fields() {
        EnumSet<LetterField> all = EnumSet.copyOf(ALWAYS);
        all.addAll(own);
        return all;
    }

    /** Whether it tells amounts, which only an owner sees. */
    public boolean tellsMoney() {
        return money;
    }

    /** The reminder after this one; empty for other kinds and after the last. */
    public Optional<LetterKind> nextReminder() {
        return switch (this) {
            case FIRST_REMINDER -> Optional.of(SECOND_REMINDER);
            case SECOND_REMINDER -> Optional.of(LAST_REMINDER);
            default -> Optional.empty();
        };
    }

    public boolean isReminder() {
        return this == FIRST_REMINDER || this == SECOND_REMINDER || this == LAST_REMINDER;
    }

    public String textKey() {
        return "letters.kind." + name();
    }
}
