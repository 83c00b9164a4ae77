package puzzleworkshop.planning;

import java.util.Collection;
import java.util.Map;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.OrderId;

/** What has been paid for orders so far; the room that keeps the payments answers. */
public interface MoneyReceived {

    /** Less what was given back; orders for which nothing came may be left out. */
    Map<OrderId, Money> of(Collection<OrderId> orders);
}
