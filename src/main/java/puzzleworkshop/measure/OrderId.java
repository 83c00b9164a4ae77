package puzzleworkshop.measure;

/** Which order; never shown to people, who read the order's number. */
public record OrderId(long value) {

    public OrderId {
        if (value <= 0) {
            throw new IllegalArgumentException("An order id is above zero, not " + value);
        }
    }
}
