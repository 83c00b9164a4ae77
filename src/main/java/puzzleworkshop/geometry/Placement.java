package puzzleworkshop.geometry;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.measure.Size;

/**
 * Where a rectangle lies on a board. From its corner the width runs in the direction of the angle and the height 90°
 * further on (clockwise as seen on the screen, because y grows downward).
 *
 * @param x mm, of the corner the rectangle is turned about
 * @param y mm
 * @param degrees 0 ≤ degrees &lt; 180; a rectangle looks the same after half a turn
 */
public record Placement(double x, double y, double degrees) {

    private static final GeometryFactory SHAPES = new GeometryFactory();

    /** The four corners, starting at (x, y), in the order width, height. */
    public List<Point> corners(Size size) {
        return corners(size.width().mm(), size.height().mm());
    }

    public List<Point> corners(double width, double height) {
        double cos = Turn.cos(degrees);
        double sin = Turn.sin(degrees);
        return List.of(
                new Point(x, y),
                new Point(x + width * cos, y + width * sin),
                new Point(x + width * cos - height * sin, y + width * sin + height * cos),
                new Point(x - height * sin, y + height * cos));
    }

    public Point centre(Size size) {
        List<Point> corners = corners(size);
        return new Point(
                (corners.get(0).xMm() + corners.get(2).xMm()) / 2,
                (corners.get(0).yMm() + corners.get(2).yMm()) / 2);
    }

    /** The rectangle made smaller (or, with a negative inset, larger) on all four sides, as a JTS polygon. */
    public Polygon polygon(Size size, double insetMm) {
        double cos = Turn.cos(degrees);
        double sin = Turn.sin(degrees);
        Placement inner = new Placement(x + insetMm * (cos - sin), y + insetMm * (sin + cos), degrees);
        Coordinate[] ring = new Coordinate[5];
        List<Point> corners =
                inner.corners(size.width().mm() - 2 * insetMm, size.height().mm() - 2 * insetMm);
        for (int i = 0; i < 5; i++) {
            Point corner = corners.get(i % 4);
            ring[i] = new Coordinate(corner.xMm(), corner.yMm());
        }
        return SHAPES.createPolygon(ring);
    }
}
