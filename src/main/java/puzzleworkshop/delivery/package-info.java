/**
 * Out of the door: what an order is packed in, by which way it reaches its customer, where its parcel is, and what comes
 * back. What customers read of it is written in the room of letters.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Delivery")
package puzzleworkshop.delivery;
