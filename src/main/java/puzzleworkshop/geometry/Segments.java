package puzzleworkshop.geometry;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;

/**
 * The border of a free area as bare line pieces, in arrays for speed. By the even-odd rule they also tell what is
 * inside. May be looked at from another angle, and a rectangle that is taken away may be added.
 */
public final class Segments {

    public final int count;
    public final double[] ax;
    public final double[] ay;
    public final double[] bx;
    public final double[] by;

    private Segments(int count) {
        this.count = count;
        ax = new double[count];
        ay = new double[count];
        bx = new double[count];
        by = new double[count];
    }

    public static Segments of(Geometry area) {
        int count = 0;
        for (Object line : LinearComponentExtracter.getLines(area)) {
            count += ((LineString) line).getNumPoints() - 1;
        }
        Segments segments = new Segments(count);
        int i = 0;
        for (Object line : LinearComponentExtracter.getLines(area)) {
            Coordinate[] ring = ((LineString) line).getCoordinates();
            for (int k = 1; k < ring.length; k++) {
                segments.set(i++, ring[k - 1].x, ring[k - 1].y, ring[k].x, ring[k].y);
            }
        }
        return segments;
    }

    private void set(int i, double x1, double y1, double x2, double y2) {
        ax[i] = x1;
        ay[i] = y1;
        bx[i] = x2;
        by[i] = y2;
    }

    /** As seen with the head turned by the angle: a rectangle at that angle is upright here. */
    public Segments seenFrom(double degrees) {
        double cos = Turn.cos(degrees);
        double sin = Turn.sin(degrees);
        Segments turned = new Segments(count);
        for (int i = 0; i < count; i++) {
            turned.set(
                    i,
                    ax[i] * cos + ay[i] * sin,
                    ay[i] * cos - ax[i] * sin,
                    bx[i] * cos + by[i] * sin,
                    by[i] * cos - bx[i] * sin);
        }
        return turned;
    }

    /** With the border of a rectangle that lies inside, so that its inside counts as outside. */
    public Segments without(Placement placement, double width, double height) {
        Segments more = new Segments(count + 4);
        System.arraycopy(ax, 0, more.ax, 0, count);
        System.arraycopy(ay, 0, more.ay, 0, count);
        System.arraycopy(bx, 0, more.bx, 0, count);
        System.arraycopy(by, 0, more.by, 0, count);
        var corners = placement.corners(width, height);
        for (int i = 0; i < 4; i++) {
            Point from = corners.get(i);
            Point to = corners.get((i + 1) % 4);
            more.set(count + i, from.xMm(), from.yMm(), to.xMm(), to.yMm());
        }
        return more;
    }

    public boolean contains(double x, double y) {
        boolean inside = false;
        for (int i = 0; i < count; i++) {
            if ((ay[i] > y) != (by[i] > y) && x < ax[i] + (y - ay[i]) / (by[i] - ay[i]) * (bx[i] - ax[i])) {
                inside = !inside;
            }
        }
        return inside;
    }

    /**
     * Whether piece i meets the inside of an upright box. Separating axes of a line piece and a box: x, y and the
     * normal of the piece; they meet unless one of the three separates them.
     */
    public boolean meets(int i, double x0, double y0, double x1, double y1) {
        double px = ax[i];
        double py = ay[i];
        double qx = bx[i];
        double qy = by[i];
        if (px <= x0 && qx <= x0 || px >= x1 && qx >= x1 || py <= y0 && qy <= y0 || py >= y1 && qy >= y1) {
            return false;
        }
        double dx = qx - px;
        double dy = qy - py;
        double middle = dx * ((y0 + y1) / 2 - py) - dy * ((x0 + x1) / 2 - px);
        return Math.abs(middle) < (Math.abs(dx) * (y1 - y0) + Math.abs(dy) * (x1 - x0)) / 2;
    }
}
