package puzzleworkshop.orders;

import java.util.Set;

/** Where an order stands; which way it may go from there is decided here and checked again by the database. */
public enum OrderState {
    /** Priced and dated, not yet accepted. */
    QUOTE,
    /** Accepted: its sheet is reserved and it is on its way through the stages. */
    CONFIRMED,
    /** Every stage is done and the customer has it; money may still be open. */
    HANDED_OVER,
    /** Paid: nothing is left to do. */
    CLOSED,
    /** Given up; kept for its history. */
    CANCELLED;

    private Set<OrderState> next() {
        return switch (this) {
            case QUOTE -> Set.of(CONFIRMED, CANCELLED);
            case CONFIRMED -> Set.of(HANDED_OVER, CANCELLED);
            case HANDED_OVER -> Set.of(CLOSED, CONFIRMED);
            case CLOSED -> Set.of(HANDED_OVER);
            case CANCELLED -> Set.of();
        };
    }

    /** A hand-over taken back (a mis-tap, a return to be made again) goes back to confirmed; a refund reopens. */
    public boolean mayBecome(OrderState state) {
        return next().contains(state);
    }

    public boolean isOpen() {
        return this == CONFIRMED;
    }

    public String textKey() {
        return "orders.state." + name();
    }
}
