package puzzleworkshop.camera.pieces;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.camera.pieces.PieceCheck.LaidPiece;

/**
 * What the pieces around a place say of the picture that belongs there. A picture goes on across a cut; so where the neighbours stand
 * out from what lies below along that cut, the missing piece would stand out as well, and cannot lie there unseen.
 */
final class PictureBorders {

    /** Points of two edges nearer than this, mm, lie on one cut. */
    private static final double SAME_CUT_MM = 1.2;

    /** Of the cuts around a place, so much must stand out. */
    private static final double ENOUGH = 0.4;

    private final List<PlaceEdge> edges = new ArrayList<>();
    private final List<double[]> shown = new ArrayList<>();

    PictureBorders(List<PieceShape> pieces, List<LaidPiece> laid) {
        for (PieceShape piece : pieces) {
            edges.add(new PlaceEdge(piece.ring()));
        }
        for (LaidPiece piece : laid) {
            shown.add(piece.shown());
        }
    }

    /** Whether the picture of a place stands out along most of the cuts around it, by what its neighbours show. */
    boolean standsOut(int place) {
        PlaceEdge edge = edges.get(place);
        int cut = 0;
        int seen = 0;
        for (int i = 0; i < PlaceEdge.POINTS; i++) {
            double x = edge.x[i];
            double y = edge.y[i];
            if (edges.stream().anyMatch(other -> other != edge && isNear(other, x, y))) {
                cut++;
                seen += shown.stream().anyMatch(points -> isNear(points, x, y)) ? 1 : 0;
            }
        }
        return cut > 0 && seen >= ENOUGH * cut;
    }

    private static boolean isNear(PlaceEdge edge, double x, double y) {
        for (int i = 0; i < PlaceEdge.POINTS; i++) {
            if (Math.hypot(edge.x[i] - x, edge.y[i] - y) < SAME_CUT_MM) {
                return true;
            }
        }
        return false;
    }

    private static boolean isNear(double[] points, double x, double y) {
        for (int i = 0; i < points.length; i += 2) {
            if (Math.hypot(points[i] - x, points[i + 1] - y) < SAME_CUT_MM) {
                return true;
            }
        }
        return false;
    }
}
