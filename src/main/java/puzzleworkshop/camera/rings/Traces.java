package puzzleworkshop.camera.rings;

import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Traces of something that lies in a photo and was not found at first.
 *
 * @param parts places of each: x, y in turn, mm
 * @param awayMm so far around itself what lies there leaves traces of its own
 */
public record Traces(List<double[]> parts, double awayMm) {

    public static final Traces NONE = new Traces(List.of(), 0);

    public Traces {
        parts = List.copyOf(parts);
    }

    public Traces scaled(double by) {
        return new Traces(
                parts.stream()
                        .map(part ->
                                Arrays.stream(part).map(place -> place * by).toArray())
                        .toList(),
                awayMm * by);
    }

    /** Whether one of them is of nothing that has since been laid in: edges in mm. */
    public boolean isMoreThan(List<double[]> rings) {
        if (parts.isEmpty()) {
            return false;
        }
        GeometryFactory factory = new GeometryFactory();
        List<Geometry> around = rings.stream()
                .map(ring -> {
                    Coordinate[] corners = new Coordinate[ring.length / 2 + 1];
                    for (int i = 0; i < corners.length; i++) {
                        corners[i] = new Coordinate(ring[2 * i % ring.length], ring[(2 * i + 1) % ring.length]);
                    }
                    return (Geometry) factory.createPolygon(corners);
                })
                .toList();
        return parts.stream()
                .map(part -> {
                    Coordinate[] places = new Coordinate[part.length / 2];
                    for (int i = 0; i < places.length; i++) {
                        places[i] = new Coordinate(part[2 * i], part[2 * i + 1]);
                    }
                    return factory.createMultiPointFromCoords(places);
                })
                .anyMatch(part -> around.stream()
                        .noneMatch(ring -> ring.isWithinDistance(part, awayMm)
                                && ring.buffer(awayMm).covers(part)));
    }
}
