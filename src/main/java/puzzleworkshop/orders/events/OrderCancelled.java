package puzzleworkshop.orders.events;

import puzzleworkshop.measure.OrderId;

/** Published within the transaction that gives an order up, so that what it holds is released with it or not at all. */
public record OrderCancelled(OrderId order, String who) implements OrderEvent {}
