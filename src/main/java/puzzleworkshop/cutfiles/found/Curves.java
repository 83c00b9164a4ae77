package puzzleworkshop.cutfiles.found;

import java.awt.Shape;
import java.awt.geom.Path2D;

/**
 * Circles and arcs as cubic curves of at most an eighth of a turn, each with handles of 4/3·tan(angle/4) radii: the
 * radius is off by less than 5 in a million, where quarter turns are off by 273 (the JDK's own circles).
 */
public final class Curves {

    private static final double LONGEST = Math.PI / 4;

    private Curves() {}

    public static Shape ellipse(double cx, double cy, double rx, double ry) {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(cx + rx, cy);
        arc(path, cx, cy, rx, ry, 0, 0, 2 * Math.PI);
        path.closePath();
        return path;
    }

    /**
     * Goes on along an arc from the place where it begins.
     *
     * @param turn of the ellipse's first axis, radians
     * @param from parameter where the arc begins, radians
     * @param swept how far it goes on, either way
     */
    public static void arc(
            Path2D path, double cx, double cy, double rx, double ry, double turn, double from, double swept) {
        int parts = Math.clamp((long) Math.ceil(Math.abs(swept) / LONGEST - 1e-9), 1, 64);
        double step = swept / parts;
        double handle = 4.0 / 3 * Math.tan(step / 4);
        double cos = Math.cos(turn);
        double sin = Math.sin(turn);
        for (int i = 0; i < parts; i++) {
            double a = from + i * step;
            double b = a + step;
            double x1 = rx * (Math.cos(a) - handle * Math.sin(a));
            double y1 = ry * (Math.sin(a) + handle * Math.cos(a));
            double x2 = rx * (Math.cos(b) + handle * Math.sin(b));
            double y2 = ry * (Math.sin(b) - handle * Math.cos(b));
            double x = rx * Math.cos(b);
            double y = ry * Math.sin(b);
            path.curveTo(
                    cx + cos * x1 - sin * y1,
                    cy + sin * x1 + cos * y1,
                    cx + cos * x2 - sin * y2,
                    cy + sin * x2 + cos * y2,
                    cx + cos * x - sin * y,
                    cy + sin * x + cos * y);
        }
    }
}
