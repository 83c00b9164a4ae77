/**
 * Customers and their orders: the wish, the offer worked out for it, the order from quote to paid, and its history.
 * Higher rooms reach an order's page through {@link puzzleworkshop.orders.ui.OrderPanel}.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Orders")
package puzzleworkshop.orders;
