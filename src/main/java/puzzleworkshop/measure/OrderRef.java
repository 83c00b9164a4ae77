package puzzleworkshop.measure;

/**
 * An order as every room may speak of it: which one, and the number by which people know it, such as 2026-0147. Rooms below
 * orders read it from the view {@code order_ref}, the only way from an id to its number.
 */
public record OrderRef(OrderId id, String number) {

    /** Its number, for sentences. */
    @Override
    public String toString() {
        return number;
    }
}
