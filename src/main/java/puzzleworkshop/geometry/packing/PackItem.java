package puzzleworkshop.geometry.packing;

/**
 * A rectangle to be laid out, sides parallel to the sheet's.
 *
 * @param width across, millimetres, above zero
 * @param height down, millimetres, above zero
 * @param turnable whether it may be laid turned by 90°
 */
public record PackItem(double width, double height, boolean turnable) {

    public PackItem {
        if (!(width > 0) || !(height > 0) || !Double.isFinite(width) || !Double.isFinite(height)) {
            throw new IllegalArgumentException("A piece needs sides above zero, not " + width + " × " + height + " mm");
        }
    }

    /** A piece that may be turned. */
    public static PackItem of(double width, double height) {
        return new PackItem(width, height, true);
    }
}
