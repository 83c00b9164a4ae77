package puzzleworkshop.orders;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;

/**
 * Which orders a list shows, and in which sequence.
 *
 * @param text part of the number, of the customer's name, contact or address, or of the note; empty for all
 * @param states empty for all
 * @param customer only this customer's
 * @param due by the day promised
 */
public record OrderFilter(String text, Set<OrderState> states, Optional<Long> customer, Due due, Sequence sequence) {

    public static final OrderFilter ALL = new OrderFilter("", Set.of(), Optional.empty());

    /** By the day promised, seen from today. */
    public enum Due {
        ANY,
        /** Before today. */
        PAST,
        /** Today and the six days after it. */
        SEVEN_DAYS,
        /** The seven days after those. */
        NEXT_SEVEN_DAYS,
        /** No day was said yet. */
        NO_DAY;

        public String textKey() {
            return "orders.due." + name();
        }

        Optional<LocalDate> from(LocalDate today) {
            return switch (this) {
                case ANY, PAST, NO_DAY -> Optional.empty();
                case SEVEN_DAYS -> Optional.of(today);
                case NEXT_SEVEN_DAYS -> Optional.of(today.plusDays(7));
            };
        }

        Optional<LocalDate> to(LocalDate today) {
            return switch (this) {
                case ANY, NO_DAY -> Optional.empty();
                case PAST -> Optional.of(today.minusDays(1));
                case SEVEN_DAYS -> Optional.of(today.plusDays(6));
                case NEXT_SEVEN_DAYS -> Optional.of(today.plusDays(13));
            };
        }
    }

    /** What comes first. Each has an index, and ends in the id so that pages of a list do not overlap. */
    public enum Sequence {
        NEWEST("o.created_at desc, o.id desc"),
        BY_DAY("o.promised_on nulls last, o.id"),
        BY_CUSTOMER("lower(c.name), o.id desc"),
        DEAREST("o.price_gross desc, o.id desc");

        private final String sql;

        Sequence(String sql) {
            this.sql = sql;
        }

        String sql() {
            return sql;
        }

        public String textKey() {
            return "orders.sequence." + name();
        }
    }

    /** Whatever day was promised, the newest first. */
    public OrderFilter(String text, Set<OrderState> states, Optional<Long> customer) {
        this(text, states, customer, Due.ANY, Sequence.NEWEST);
    }

    public static OrderFilter in(OrderState... states) {
        return new OrderFilter("", Set.of(states), Optional.empty());
    }

    public static OrderFilter of(long customer) {
        return new OrderFilter("", Set.of(), Optional.of(customer));
    }
}
