package puzzleworkshop.geometry.align;

import java.awt.geom.AffineTransform;
import puzzleworkshop.geometry.Point;

/**
 * A shift, a turn and an even stretch, never a mirror: x' = a·x − b·y + dx, y' = b·x + a·y + dy, in millimetres.
 *
 * @param a stretch times the cosine of the turn
 * @param b stretch times the sine of the turn
 * @param dxMm where x = 0, y = 0 goes to, along x
 * @param dyMm the same along y
 */
public record Similarity(double a, double b, double dxMm, double dyMm) {

    public static final Similarity NONE = new Similarity(1, 0, 0, 0);

    public Similarity {
        if (!Double.isFinite(a) || !Double.isFinite(b) || !Double.isFinite(dxMm) || !Double.isFinite(dyMm)) {
            throw new IllegalArgumentException("A place needs four finite numbers");
        }
        if (a == 0 && b == 0) {
            throw new IllegalArgumentException("A place cannot shrink everything to a point");
        }
    }

    /** Turned and stretched about a point, then shifted. */
    public static Similarity about(Point middle, double stretch, double radians, double shiftX, double shiftY) {
        double a = stretch * Math.cos(radians);
        double b = stretch * Math.sin(radians);
        return new Similarity(
                a,
                b,
                middle.xMm() - a * middle.xMm() + b * middle.yMm() + shiftX,
                middle.yMm() - b * middle.xMm() - a * middle.yMm() + shiftY);
    }

    public Point of(Point p) {
        return new Point(a * p.xMm() - b * p.yMm() + dxMm, b * p.xMm() + a * p.yMm() + dyMm);
    }

    /** Where a point came from. */
    public Point backwards(Point p) {
        double x = p.xMm() - dxMm;
        double y = p.yMm() - dyMm;
        double squared = a * a + b * b;
        return new Point((a * x + b * y) / squared, (a * y - b * x) / squared);
    }

    /** 1 is as drawn. */
    public double stretch() {
        return Math.hypot(a, b);
    }

    /** From x towards y, in radians between −π and π. */
    public double turn() {
        return Math.atan2(b, a);
    }

    /** The same turn, and the same place for one point, without the stretch. */
    public Similarity unstretched(Point fixed) {
        Point stays = of(fixed);
        double stretch = stretch();
        Similarity turned = new Similarity(a / stretch, b / stretch, 0, 0);
        Point moved = turned.of(fixed);
        return new Similarity(turned.a, turned.b, stays.xMm() - moved.xMm(), stays.yMm() - moved.yMm());
    }

    public AffineTransform transform() {
        return new AffineTransform(a, b, -b, a, dxMm, dyMm);
    }
}
