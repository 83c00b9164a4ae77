package puzzleworkshop.delivery;

/** Where a parcel is; what is sent and what is collected go different ways. */
public enum ParcelState {
    /** In its box, not yet out of the house and nobody told. */
    PACKED,
    /** With the carrier. */
    SENT,
    /** The customer has it; the carrier or the customer said so. */
    DELIVERED,
    /** Waits to be collected, and the customer may come. */
    READY,
    /** The customer came for it. */
    COLLECTED;

    /** Whether it is still in the workshop. */
    public boolean isHere() {
        return this == PACKED || this == READY;
    }

    /** Whether the customer has it. */
    public boolean hasArrived() {
        return this == DELIVERED || this == COLLECTED;
    }

    public String textKey() {
        return "delivery.parcel." + name();
    }
}
