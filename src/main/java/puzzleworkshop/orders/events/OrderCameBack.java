package puzzleworkshop.orders.events;

import puzzleworkshop.measure.OrderId;

/** Published when a hand-over is taken back as a mistake, within the transaction that takes it back. */
public record OrderCameBack(OrderId order, String who) implements OrderEvent {}
