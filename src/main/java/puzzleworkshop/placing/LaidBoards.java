package puzzleworkshop.placing;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Refused;

/**
 * Boards of one cut as they lie on the bed: their lines are brought there once, whatever files are then asked for.
 *
 * @param places at least one
 * @param cuts what is cut of each, on the bed
 * @param frames what is traced of each before
 */
record LaidBoards(List<ReadyPlace> places, List<CutPlan> cuts, List<CurvePath> frames) {

    private static final double FLATTENING_MM = 0.05;
    private static final GeometryFactory JTS = new GeometryFactory();

    LaidBoards {
        places = List.copyOf(places);
        cuts = List.copyOf(cuts);
        frames = List.copyOf(frames);
    }

    /** @throws Refused when one would leave the bed, or two would lie on one another */
    static LaidBoards of(List<ReadyPlace> places) {
        requireApart(places);
        return new LaidBoards(
                places,
                places.stream().map(ReadyPlace::cut).toList(),
                places.stream().map(ReadyPlace::frame).toList());
    }

    /** Two boards cannot lie on one another: then one was measured at the other's marks. */
    private static void requireApart(List<ReadyPlace> places) {
        List<Polygon> edges =
                places.stream().map(place -> polygon(place.edges())).toList();
        for (int i = 0; i < places.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (edges.get(i).intersects(edges.get(j))) {
                    throw new Refused(
                            "placing.file.on-another",
                            places.get(j).position().copy(),
                            places.get(i).position().copy());
                }
            }
        }
    }

    private static Polygon polygon(CurvePath ring) {
        return JTS.createPolygon(ring.flattened(FLATTENING_MM).stream()
                .map(p -> new Coordinate(p.xMm(), p.yMm()))
                .toArray(Coordinate[]::new));
    }
}
