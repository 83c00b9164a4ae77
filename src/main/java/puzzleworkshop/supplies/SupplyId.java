package puzzleworkshop.supplies;

/** Which item of the supplies. */
public record SupplyId(long value) {

    public SupplyId {
        if (value <= 0) {
            throw new IllegalArgumentException("A supply id is above zero, not " + value);
        }
    }
}
