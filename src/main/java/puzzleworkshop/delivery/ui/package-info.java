/** Screens of parcels: the day's hand-overs, the order's parcel, ways of sending, boxes, what came back. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.delivery.ui;
