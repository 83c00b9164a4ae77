package puzzleworkshop.geometry;

/**
 * A place on the sheet in millimetres; x grows to the right, y grows down, as on a screen and in SVG.
 *
 * @param xMm from the left
 * @param yMm from the top
 */
public record Point(double xMm, double yMm) {

    public Point {
        if (!Double.isFinite(xMm) || !Double.isFinite(yMm)) {
            throw new IllegalArgumentException("A point needs two finite numbers, not " + xMm + ", " + yMm);
        }
    }

    public static Point of(double xMm, double yMm) {
        return new Point(xMm, yMm);
    }

    public double distanceTo(Point other) {
        double dx = other.xMm - xMm;
        double dy = other.yMm - yMm;
        return Math.sqrt(dx * dx + dy * dy);
    }

    public Point plus(double dxMm, double dyMm) {
        return new Point(xMm + dxMm, yMm + dyMm);
    }

    /** The point at a share of the way to another: 0 is here, 1 is there. */
    public Point towards(Point other, double share) {
        return new Point(xMm + (other.xMm - xMm) * share, yMm + (other.yMm - yMm) * share);
    }
}
