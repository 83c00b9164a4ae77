package puzzleworkshop.measure;

/**
 * Width by height of something flat; both above zero.
 *
 * @param width across, as the picture is looked at
 * @param height down
 */
public record Size(Length width, Length height) {

    public Size {
        if (!width.isPositive() || !height.isPositive()) {
            throw new IllegalArgumentException(
                    "Width and height must be above zero, not " + width.mm() + " × " + height.mm() + " mm");
        }
    }

    public static Size mm(double width, double height) {
        return new Size(Length.mm(width), Length.mm(height));
    }

    public Area area() {
        return width.times(height);
    }

    /** Twice width plus height: the length of the outline. */
    public Length perimeter() {
        return width.plus(height).times(2);
    }

    /** Width over height. */
    public double aspect() {
        return width.mm() / height.mm();
    }

    public Size turned() {
        return new Size(height, width);
    }

    /** Larger by the same border on all four sides (smaller for a negative border). */
    public Size grownBy(Length border) {
        return new Size(width.plus(border.times(2)), height.plus(border.times(2)));
    }

    public Length longerSide() {
        return width.compareTo(height) >= 0 ? width : height;
    }

    public Length shorterSide() {
        return width.compareTo(height) >= 0 ? height : width;
    }

    /** Whether this lies inside another, as it is or turned by 90°. Other angles are the geometry room's work. */
    public boolean fitsUpright(Size other) {
        return longerSide().compareTo(other.longerSide()) <= 0 && shorterSide().compareTo(other.shorterSide()) <= 0;
    }
}
