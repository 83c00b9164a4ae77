package puzzleworkshop.orders.events;

import puzzleworkshop.measure.OrderId;
import puzzleworkshop.runtime.Change;

/** Told after a change to an order is safe in the database, once for each transaction, so that open screens can show it. */
public record OrderChanged(OrderId order) implements OrderEvent, Change {}
