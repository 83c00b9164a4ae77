package puzzleworkshop.geometry;

/**
 * A point on a board.
 *
 * @param x mm to the right
 * @param y mm down, as boards are drawn on the screen
 */
public record Spot(double x, double y) {

    public double distanceTo(Spot other) {
        return Math.hypot(x - other.x, y - other.y);
    }
}
