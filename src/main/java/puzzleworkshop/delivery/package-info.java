/**
 * Out of the door: what an order is packed in, by which way it reaches its customer, where its parcel is, and what comes
 * back. Letters to customers follow its events.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Delivery")
package puzzleworkshop.delivery;
