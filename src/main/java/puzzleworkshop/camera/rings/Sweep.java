package puzzleworkshop.camera.rings;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** What several rings around one part have in common; of rings around a hole, what any of them holds. */
public final class Sweep {

    private static final GeometryFactory SHAPES = new GeometryFactory();

    private final double[] first;
    private final boolean isHole;
    private Geometry now;

    public Sweep(double[] ring) {
        first = ring;
        isHole = Ring.area(ring) < 0;
        now = shape(ring);
    }

    public void with(double[] ring) {
        now = OverlayNGRobust.overlay(now, shape(ring), isHole ? OverlayNG.UNION : OverlayNG.INTERSECTION);
    }

    private static Geometry shape(double[] ring) {
        Coordinate[] closed = new Coordinate[ring.length / 2 + 1];
        for (int i = 0; i < closed.length; i++) {
            int at = 2 * i % ring.length;
            closed[i] = new Coordinate(ring[at], ring[at + 1]);
        }
        // a measured ring may cross itself by a hair
        return SHAPES.createPolygon(closed).buffer(0);
    }

    /** Around the largest part of it, the same way round as the first ring; that one where nothing is left. */
    public double[] ring() {
        Polygon largest = null;
        for (int i = 0; i < now.getNumGeometries(); i++) {
            if (now.getGeometryN(i) instanceof Polygon part
                    && (largest == null || part.getArea() > largest.getArea())) {
                largest = part;
            }
        }
        if (largest == null || largest.isEmpty()) {
            return first;
        }
        Coordinate[] around = largest.getExteriorRing().getCoordinates();
        double[] ring = new double[2 * around.length - 2];
        for (int i = 0; i < around.length - 1; i++) {
            ring[2 * i] = around[i].x;
            ring[2 * i + 1] = around[i].y;
        }
        return Ring.area(ring) < 0 == isHole ? ring : reversed(ring);
    }

    private static double[] reversed(double[] ring) {
        double[] turned = Arrays.copyOf(ring, ring.length);
        for (int i = 0; i < ring.length; i += 2) {
            turned[i] = ring[ring.length - 2 - i];
            turned[i + 1] = ring[ring.length - 1 - i];
        }
        return turned;
    }
}
