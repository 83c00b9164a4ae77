package puzzleworkshop.delivery.sending;

/** Whether a way brings a parcel to the customer or the customer comes for it. */
public enum WayKind {
    COLLECTION,
    PARCEL;

    public String textKey() {
        return "delivery.kind." + name();
    }
}
