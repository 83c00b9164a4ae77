package puzzleworkshop.orders.events;

import puzzleworkshop.measure.OrderId;

/** Published when the customer has the puzzle, while the change is still to be made safe: what it brings is kept with it, or nothing is. */
public record OrderHandedOver(OrderId order, String who) implements OrderEvent {}
