package puzzleworkshop.camera.sheet;

/**
 * One printed marker: a black square with a code.
 *
 * @param code its number in the dictionary
 * @param x of its middle on the sheet or card, mm from the left
 * @param y of its middle, mm from the top
 * @param side of the black square, mm
 */
public record Marker(int code, double x, double y, double side) {

    /** Corners clockwise from the top left one of the upright code: x, y of each in turn. */
    public double[] corners() {
        double r = side / 2;
        return new double[] {x - r, y - r, x + r, y - r, x + r, y + r, x - r, y + r};
    }
}
