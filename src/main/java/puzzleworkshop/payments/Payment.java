package puzzleworkshop.payments;

import java.time.LocalDate;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.OrderId;

/**
 * Money taken for an order, or given back.
 *
 * @param amount above zero, also for a refund
 */
public record Payment(OrderId order, Kind kind, Way way, Money amount, LocalDate paidOn, String note, String who) {

    public enum Kind {
        DEPOSIT,
        PAYMENT,
        REFUND;

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

    Payment rounded() {
        return new Payment(order, kind, way, amount.rounded(), paidOn, note.strip(), who);
    }

    /** What it adds to what was received. */
    public Money received() {
        return kind == Kind.REFUND ? amount.negated() : amount;
    }
}
