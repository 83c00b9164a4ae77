package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.Component;
import java.util.Optional;
import puzzleworkshop.orders.Order;

/**
 * A section on the page of one order, shown by whichever room knows about it: progress, money, papers, the customer's
 * link. Rooms above this one take part by having such a bean; the page shows them in the order of their places.
 */
public interface OrderPanel {

    /** Where on the page: smaller is higher. Progress 10, picture 20, customer's link 30, sheet 40, money 50, papers 60. */
    int place();

    /** Whether it stands with the actions at the head of the page instead of among the sections. */
    default boolean inHead() {
        return false;
    }

    /**
     * @param order as it stands now
     * @param changed to be run after the panel has changed the order, so that the whole page is read again
     * @return empty when there is nothing to show for this order
     */
    Optional<Component> show(Order order, Runnable changed);
}
