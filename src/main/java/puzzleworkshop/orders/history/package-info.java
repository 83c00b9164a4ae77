/** What happened to an order, as it is told on its page; only added to. */
@org.springframework.modulith.NamedInterface("history")
package puzzleworkshop.orders.history;
