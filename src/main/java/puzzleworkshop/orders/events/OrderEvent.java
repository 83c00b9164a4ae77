package puzzleworkshop.orders.events;

import puzzleworkshop.measure.OrderId;

/** What other rooms may learn of an order. Each event says whether it comes within the transaction or after it. */
public sealed interface OrderEvent permits OrderChanged, OrderCancelled, OrderHandedOver, OrderCameBack {

    OrderId order();
}
