/** What other rooms are told of an order within its transaction. */
@org.springframework.modulith.NamedInterface("events")
package puzzleworkshop.orders.events;
