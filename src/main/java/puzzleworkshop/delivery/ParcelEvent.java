package puzzleworkshop.delivery;

import java.util.List;
import puzzleworkshop.measure.OrderId;

/**
 * Something happened to a parcel that its customer may want to hear of. Published within the transaction that writes it:
 * what follows from it (a letter in the outbox) is kept with it, or neither is.
 */
public sealed interface ParcelEvent {

    ParcelId parcel();

    /** Orders in the parcel, lowest id first. */
    List<OrderId> orders();

    String who();

    /** It is with the carrier. */
    record Sent(ParcelId parcel, List<OrderId> orders, String who) implements ParcelEvent {}

    /** The customer may come for it. */
    record ReadyToCollect(ParcelId parcel, List<OrderId> orders, String who) implements ParcelEvent {}

    /** The customer has it: the carrier or the customer said so, or it was collected. */
    record Delivered(ParcelId parcel, List<OrderId> orders, String who) implements ParcelEvent {}

    /** It waits for longer than was agreed, and somebody wants to remind the customer. */
    record ReminderToCollect(ParcelId parcel, List<OrderId> orders, String who) implements ParcelEvent {}
}
