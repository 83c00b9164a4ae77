package puzzleworkshop.geometry.packing;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;

/** An independent judge of layouts: JTS polygons, their covers and intersections, nothing of the packer's own. */
public final class LayoutJudge {

    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double TOLERANCE = 1e-6;

    private LayoutJudge() {}

    /** What is wrong with a layout, in words; empty when nothing is. */
    public static String fault(List<PackItem> pieces, List<PackedAt> spots, double width, double height, double gap) {
        if (spots.size() != pieces.size()) {
            return spots.size() + " spots for " + pieces.size() + " pieces";
        }
        Geometry sheet =
                FACTORY.toGeometry(new Envelope(-TOLERANCE, width + TOLERANCE, -TOLERANCE, height + TOLERANCE));
        List<STRtree> trees = new ArrayList<>();
        List<Geometry> outlines = new ArrayList<>();
        for (int i = 0; i < spots.size(); i++) {
            PackedAt spot = spots.get(i);
            PackItem piece = pieces.get(spot.piece());
            if (spot.piece() != i || spot.turned() && !piece.turnable()) {
                return "piece " + i + " is another or turned against its will";
            }
            Geometry outline = outline(piece, spot);
            outlines.add(outline);
            if (!sheet.covers(outline)) {
                return "piece " + i + " leaves the sheet: " + outline;
            }
            while (trees.size() <= spot.sheet()) {
                trees.add(new STRtree());
            }
            trees.get(spot.sheet()).insert(outline.getEnvelopeInternal(), i);
        }
        for (int i = 0; i < spots.size(); i++) {
            Envelope near = new Envelope(outlines.get(i).getEnvelopeInternal());
            near.expandBy(gap);
            for (Object other : trees.get(spots.get(i).sheet()).query(near)) {
                int j = (Integer) other;
                if (j > i && tooNear(outlines.get(i), outlines.get(j), gap)) {
                    return "pieces " + i + " and " + j + " are too near: " + outlines.get(i) + " " + outlines.get(j);
                }
            }
        }
        return "";
    }

    private static boolean tooNear(Geometry a, Geometry b, double gap) {
        if (gap > 0) {
            Envelope x = a.getEnvelopeInternal();
            Envelope y = b.getEnvelopeInternal();
            double across = Math.max(x.getMinX(), y.getMinX()) - Math.min(x.getMaxX(), y.getMaxX());
            double along = Math.max(x.getMinY(), y.getMinY()) - Math.min(x.getMaxY(), y.getMaxY());
            return Math.max(across, along) < gap - TOLERANCE;
        }
        return a.intersection(b).getArea() > TOLERANCE;
    }

    private static Geometry outline(PackItem piece, PackedAt spot) {
        double w = spot.turned() ? piece.height() : piece.width();
        double h = spot.turned() ? piece.width() : piece.height();
        return FACTORY.createPolygon(new Coordinate[] {
            new Coordinate(spot.x(), spot.y()),
            new Coordinate(spot.x() + w, spot.y()),
            new Coordinate(spot.x() + w, spot.y() + h),
            new Coordinate(spot.x(), spot.y() + h),
            new Coordinate(spot.x(), spot.y())
        });
    }
}
