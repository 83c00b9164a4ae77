package puzzleworkshop.artwork.pixels;

/**
 * Where the pixels of an upright picture lie among the stored ones (EXIF 2.3, CIPA DC-008, tag 274): 1 as is, 2 mirrored,
 * 3 turned by 180°, 4 flipped, 5 transposed, 6 to be turned 90° clockwise, 7 transposed over the other diagonal, 8 to be
 * turned 90° anticlockwise.
 *
 * @param value 1 to 8
 * @param storedWidth pixels across as stored
 * @param storedHeight pixels down as stored
 */
public record Orientation(int value, int storedWidth, int storedHeight) {

    public int uprightWidth() {
        return value >= 5 ? storedHeight : storedWidth;
    }

    public int uprightHeight() {
        return value >= 5 ? storedWidth : storedHeight;
    }

    public int storedX(int x, int y) {
        return switch (value) {
            case 2, 3 -> storedWidth - 1 - x;
            case 5, 6 -> y;
            case 7, 8 -> storedWidth - 1 - y;
            default -> x;
        };
    }

    public int storedY(int x, int y) {
        return switch (value) {
            case 3, 4 -> storedHeight - 1 - y;
            case 5, 8 -> x;
            case 6, 7 -> storedHeight - 1 - x;
            default -> y;
        };
    }

    /**
     * Where a point of the stored picture is seen in the upright one, both in shares of the picture, right and down.
     *
     * @param value 1 to 8
     */
    public static double[] upright(int value, double u, double v) {
        return switch (value) {
            case 2 -> new double[] {1 - u, v};
            case 3 -> new double[] {1 - u, 1 - v};
            case 4 -> new double[] {u, 1 - v};
            case 5 -> new double[] {v, u};
            case 6 -> new double[] {1 - v, u};
            case 7 -> new double[] {1 - v, 1 - u};
            case 8 -> new double[] {v, 1 - u};
            default -> new double[] {u, v};
        };
    }

    /** The same after turning clockwise. */
    public static double[] turned(double[] at, int quarterTurns) {
        return switch (quarterTurns) {
            case 1 -> new double[] {1 - at[1], at[0]};
            case 2 -> new double[] {1 - at[0], 1 - at[1]};
            case 3 -> new double[] {at[1], 1 - at[0]};
            default -> at;
        };
    }
}
