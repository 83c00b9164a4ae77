package puzzleworkshop.bench;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.camera.pieces.PieceShape;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Piece;

/** The edges of a pattern's pieces as the beam leaves them, half a kerf inside of the drawn lines, to look for in photos. */
public final class PieceEdges {

    private static final double FLATTENING_MM = 0.02;
    private static final GeometryFactory JTS = new GeometryFactory();

    private PieceEdges() {}

    public static List<PieceShape> of(CutPattern pattern) {
        double kerf = pattern.spec().kerf().mm();
        return pattern.pieces().stream()
                .map(piece -> new PieceShape(piece.number(), left(piece, kerf)))
                .toList();
    }

    private static double[] left(Piece piece, double kerfMm) {
        Polygon drawn = JTS.createPolygon(piece.outline().flattened(FLATTENING_MM).stream()
                .map(p -> new Coordinate(p.xMm(), p.yMm()))
                .toArray(Coordinate[]::new));
        Geometry left = drawn.buffer(-kerfMm / 2);
        Polygon largest = drawn;
        double area = 0;
        for (int i = 0; i < left.getNumGeometries(); i++) {
            if (left.getGeometryN(i).getArea() > area && left.getGeometryN(i) instanceof Polygon part) {
                area = part.getArea();
                largest = part;
            }
        }
        return clockwise(largest.getExteriorRing().getCoordinates());
    }

    /** As seen with y down; without the last point, which repeats the first. */
    private static double[] clockwise(Coordinate[] ring) {
        double doubled = 0;
        int n = ring.length - 1;
        for (int i = 0; i < n; i++) {
            doubled += ring[i].x * ring[i + 1].y - ring[i + 1].x * ring[i].y;
        }
        double[] edge = new double[2 * n];
        for (int i = 0; i < n; i++) {
            Coordinate c = ring[doubled > 0 ? i : n - i];
            edge[2 * i] = c.x;
            edge[2 * i + 1] = c.y;
        }
        return edge;
    }
}
