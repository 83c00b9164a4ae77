package puzzleworkshop.geometry;

/**
 * The smallest upright rectangle around something, in millimetres; may have no width or height.
 *
 * @param minX left
 * @param minY top
 * @param maxX right, not less than left
 * @param maxY bottom, not less than top
 */
public record Bounds(double minX, double minY, double maxX, double maxY) {

    public Bounds {
        if (!(minX <= maxX) || !(minY <= maxY)) {
            throw new IllegalArgumentException(
                    "Bounds run from small to large, not " + minX + ".." + maxX + ", " + minY + ".." + maxY);
        }
    }

    public static Bounds at(Point point) {
        return new Bounds(point.xMm(), point.yMm(), point.xMm(), point.yMm());
    }

    public Bounds and(Bounds other) {
        return new Bounds(
                Math.min(minX, other.minX),
                Math.min(minY, other.minY),
                Math.max(maxX, other.maxX),
                Math.max(maxY, other.maxY));
    }

    public Bounds and(Point point) {
        return and(at(point));
    }

    /** Larger by a border on all sides. */
    public Bounds grownBy(double mm) {
        return new Bounds(minX - mm, minY - mm, maxX + mm, maxY + mm);
    }

    public double width() {
        return maxX - minX;
    }

    public double height() {
        return maxY - minY;
    }

    public Point centre() {
        return new Point((minX + maxX) / 2, (minY + maxY) / 2);
    }

    /** Whether the other lies inside, edges included. */
    public boolean holds(Bounds other) {
        return minX <= other.minX && minY <= other.minY && maxX >= other.maxX && maxY >= other.maxY;
    }

    /** Whether the two share at least a point. */
    public boolean touches(Bounds other) {
        return minX <= other.maxX && other.minX <= maxX && minY <= other.maxY && other.minY <= maxY;
    }
}
