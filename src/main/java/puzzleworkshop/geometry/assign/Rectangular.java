package puzzleworkshop.geometry.assign;

import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.Size;

/** Boards that are rectangles, lying at whatever angle, without a bad area. */
final class Rectangular {

    private Rectangular() {}

    /** Its sides; empty when the board is no rectangle. */
    static Optional<Size> of(Outline outline) {
        Geometry free = outline.freeShape();
        Coordinate[] corners = free.getCoordinates();
        if (free.getNumGeometries() != 1 || corners.length != 5) {
            return Optional.empty();
        }
        double one = corners[0].distance(corners[1]);
        double other = corners[1].distance(corners[2]);
        boolean opposite = Math.abs(corners[2].distance(corners[3]) - one) < Outline.TOLERANCE
                && Math.abs(corners[3].distance(corners[0]) - other) < Outline.TOLERANCE;
        boolean square = Math.abs(free.getArea() - one * other) < Outline.TOLERANCE * (one + other);
        return opposite && square ? Optional.of(Size.mm(one, other)) : Optional.empty();
    }
}
