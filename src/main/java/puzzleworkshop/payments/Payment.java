package puzzleworkshop.payments;

import java.time.LocalDate;
import java.util.OptionalLong;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;

/**
 * Money taken for an order, or given back; or a line that takes a mistyped one back.
 *
 * @param number of the line, 0 before it is written
 * @param amount above zero, also for a refund
 * @param takesBack the number of the line that this one undoes
 */
public record Payment(
        long number,
        OrderId order,
        Kind kind,
        Way way,
        Money amount,
        LocalDate paidOn,
        String note,
        String who,
        OptionalLong takesBack) {

    public enum Kind {
        DEPOSIT,
        PAYMENT,
        REFUND,
        /** Undoes money received that never came, or not so much. */
        RECEIPT_TAKEN_BACK,
        /** Undoes a refund that was never given. */
        REFUND_TAKEN_BACK;

        public boolean takesBack() {
            return this == RECEIPT_TAKEN_BACK || this == REFUND_TAKEN_BACK;
        }

        public String textKey() {
            return "payments.kind." + name();
        }
    }

    public enum Way {
        CASH,
        TRANSFER,
        CARD,
        OTHER;

        public String textKey() {
            return "payments.way." + name();
        }
    }

    public static Payment of(
            OrderId order, Kind kind, Way way, Money amount, LocalDate paidOn, String note, String who) {
        return new Payment(0, order, kind, way, amount, paidOn, note, who, OptionalLong.empty());
    }

    Payment rounded() {
        return new Payment(number, order, kind, way, amount.rounded(), paidOn, note.strip(), who, takesBack);
    }

    /** The line that undoes this one. */
    Payment takenBack(LocalDate on, String why, String by) {
        Kind undoing = kind == Kind.REFUND ? Kind.REFUND_TAKEN_BACK : Kind.RECEIPT_TAKEN_BACK;
        return new Payment(0, order, undoing, way, amount, on, why, by, OptionalLong.of(number));
    }

    /** What it adds to what was received. */
    public Money received() {
        return kind == Kind.REFUND || kind == Kind.RECEIPT_TAKEN_BACK ? amount.negated() : amount;
    }
}
