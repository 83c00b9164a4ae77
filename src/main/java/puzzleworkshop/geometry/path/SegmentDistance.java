package puzzleworkshop.geometry.path;

/** Distances between straight stretches given by their ends; exact up to rounding. */
public final class SegmentDistance {

    private SegmentDistance() {}

    public static double toPoint(double ax, double ay, double bx, double by, double px, double py) {
        double dx = bx - ax;
        double dy = by - ay;
        double square = dx * dx + dy * dy;
        double t = square == 0 ? 0 : ((px - ax) * dx + (py - ay) * dy) / square;
        t = t < 0 ? 0 : Math.min(t, 1);
        double x = ax + t * dx - px;
        double y = ay + t * dy - py;
        return Math.sqrt(x * x + y * y);
    }

    /** Zero where they cross or touch. */
    public static double between(
            double ax, double ay, double bx, double by, double cx, double cy, double dx, double dy) {
        if (cross(ax, ay, bx, by, cx, cy, dx, dy)) {
            return 0;
        }
        return Math.min(
                Math.min(toPoint(ax, ay, bx, by, cx, cy), toPoint(ax, ay, bx, by, dx, dy)),
                Math.min(toPoint(cx, cy, dx, dy, ax, ay), toPoint(cx, cy, dx, dy, bx, by)));
    }

    /** Whether each passes through the other's inside; ends that merely touch are left to the distances. */
    public static boolean cross(
            double ax, double ay, double bx, double by, double cx, double cy, double dx, double dy) {
        double c = turn(ax, ay, bx, by, cx, cy);
        double d = turn(ax, ay, bx, by, dx, dy);
        if (c > 0 == d > 0 || c == 0 || d == 0) {
            return false;
        }
        double a = turn(cx, cy, dx, dy, ax, ay);
        double b = turn(cx, cy, dx, dy, bx, by);
        return a > 0 != b > 0 && a != 0 && b != 0;
    }

    /**
     * The same for stretches of two lines that may meet in a corner of either, as drawings with round numbers do: a point
     * on a line counts as on one and the same side of it. So a line that passes through in a corner crosses once, and
     * one that only touches crosses twice or not at all.
     */
    public static boolean changesSides(
            double ax, double ay, double bx, double by, double cx, double cy, double dx, double dy) {
        return turn(ax, ay, bx, by, cx, cy) > 0 != turn(ax, ay, bx, by, dx, dy) > 0
                && turn(cx, cy, dx, dy, ax, ay) > 0 != turn(cx, cy, dx, dy, bx, by) > 0;
    }

    private static double turn(double ax, double ay, double bx, double by, double px, double py) {
        return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
    }
}
