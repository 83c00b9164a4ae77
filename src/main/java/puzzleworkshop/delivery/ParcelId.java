package puzzleworkshop.delivery;

/** Which parcel. */
public record ParcelId(long value) {

    public ParcelId {
        if (value <= 0) {
            throw new IllegalArgumentException("A parcel's id is above zero, not " + value);
        }
    }
}
