package puzzleworkshop.bench;

import java.util.List;
import puzzleworkshop.orders.Order;

/**
 * What to look at when an order is handed over, on screen and on paper: it depends on the way the order goes. Answered by the
 * room that has the parcels.
 */
public interface HandOverChecks {

    List<Checklist.Line> of(Order order);
}
