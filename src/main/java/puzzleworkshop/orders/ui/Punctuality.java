package puzzleworkshop.orders.ui;

import java.util.Optional;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.orders.Order;

/** Whether the day promised for an order holds. The room that plans the work knows; lists and heads of orders ask. */
public interface Punctuality {

    /**
     * What has to be said of the day.
     *
     * @param kind how it looks: a warning or worse
     * @param words such as 'late by 2 days'
     */
    record Concern(Verdict.Kind kind, String words) {}

    /** Empty while nothing has to be said: the day holds, or the order is not under way. */
    Optional<Concern> of(Order order);
}
