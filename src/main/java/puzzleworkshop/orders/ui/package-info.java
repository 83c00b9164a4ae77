/** The list of orders, the page of one order, and the page on which a new one is worked out. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.orders.ui;
