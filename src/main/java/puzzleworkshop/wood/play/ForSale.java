package puzzleworkshop.wood.play;

/**
 * One board that can be bought once, in the period that offers it.
 *
 * @param cost in whole units of money, at least 0
 */
public record ForSale(int width, int height, long cost) {

    public ForSale {
        if (width < 1 || height < 1 || cost < 0) {
            throw new IllegalArgumentException("No such board: " + width + " x " + height + " for " + cost);
        }
    }

    public long area() {
        return (long) width * height;
    }
}
