package puzzleworkshop.orders;

import puzzleworkshop.measure.OrderId;

/** Published after a change to an order is safe in the database, so that open screens can show it. */
public record OrderChanged(OrderId order) {}
