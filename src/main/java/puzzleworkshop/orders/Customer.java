package puzzleworkshop.orders;

/**
 * Who a puzzle is made for.
 *
 * @param id zero while not yet kept
 * @param name not empty
 * @param contact how to reach them: e-mail or telephone; may be empty
 * @param address where parcels go, lines separated by line ends; may be empty
 */
public record Customer(long id, String name, String contact, String address) {

    public static Customer newcomer(String name, String contact, String address) {
        return new Customer(0, name.strip(), contact.strip(), address.strip());
    }

    public boolean isKept() {
        return id > 0;
    }
}
