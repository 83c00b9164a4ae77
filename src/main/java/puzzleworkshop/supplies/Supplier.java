package puzzleworkshop.supplies;

/**
 * Where supplies are bought.
 *
 * @param id zero while not yet kept
 */
public record Supplier(long id, String name, String contact) {}
