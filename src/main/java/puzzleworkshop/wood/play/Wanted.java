package puzzleworkshop.wood.play;

/** A rectangle to be cut, in whole units (millimetres in the workshop); sides at least 1. */
public record Wanted(int width, int height) {

    public Wanted {
        if (width < 1 || height < 1) {
            throw new IllegalArgumentException("A blank has sides, not " + width + " x " + height);
        }
    }

    public long area() {
        return (long) width * height;
    }

    /** Whether it lies in a room of this size as it is. */
    public boolean fits(int roomWidth, int roomHeight) {
        return width <= roomWidth && height <= roomHeight;
    }

    public Wanted turned() {
        return new Wanted(height, width);
    }
}
