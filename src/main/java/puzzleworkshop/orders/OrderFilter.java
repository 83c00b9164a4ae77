package puzzleworkshop.orders;

import java.util.Optional;
import java.util.Set;

/**
 * Which orders a list shows.
 *
 * @param text part of the number or of the customer's name; empty for all
 * @param states empty for all
 * @param customer only this customer's
 */
public record OrderFilter(String text, Set<OrderState> states, Optional<Long> customer) {

    public static final OrderFilter ALL = new OrderFilter("", Set.of(), Optional.empty());

    public static OrderFilter in(OrderState... states) {
        return new OrderFilter("", Set.of(states), Optional.empty());
    }
}
