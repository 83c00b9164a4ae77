/** The picture of an order with its cut lines, drawn once and kept. */
@org.springframework.modulith.NamedInterface("preview")
package puzzleworkshop.orders.preview;
