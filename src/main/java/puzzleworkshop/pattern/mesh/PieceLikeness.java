package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Piece;

/**
 * The two edges and the two whole pieces of a pattern that are most like each other, after the best small shift and turn, as
 * greatest distance and as area between them. Edges are compared both ways round, pieces in every turn in which the same
 * number of edges lie upon each other; what counts of a piece is its edge that fits worst. The play of the cut is a kerf: two
 * that differ by less could be taken for each other.
 *
 * @param edgesMm greatest distance of the two edges most alike; at most {@link #LOOKED_TO_MM}
 * @param edgesAreaMm2 area between them
 * @param piecesMm the same of the two pieces most alike
 * @param piecesAreaMm2 area between all their edges together
 */
public record PieceLikeness(double edgesMm, double edgesAreaMm2, double piecesMm, double piecesAreaMm2) {

    /** Farther apart than this nobody takes one for the other. */
    public static final double LOOKED_TO_MM = 3;

    public static PieceLikeness of(CutPattern pattern) {
        Set<Point> meetings = meetings(pattern);
        List<List<EdgeShape>> pieces = new ArrayList<>();
        for (Piece piece : pattern.pieces()) {
            if (!piece.isPersonal()) {
                pieces.add(edges(piece.outline(), meetings));
            }
        }
        double[] edges = nearestEdges(inner(pattern, meetings));
        double[] whole = nearestPieces(pieces);
        return new PieceLikeness(edges[0], edges[1], whole[0], whole[1]);
    }

    /** Ends of edges: points of more than two pieces, and on the outer edge of two. */
    private static Set<Point> meetings(CutPattern pattern) {
        Map<Point, Integer> met = new HashMap<>();
        for (Piece piece : pattern.pieces()) {
            ends(piece.outline()).forEach(point -> met.merge(point, 1, Integer::sum));
        }
        Set<Point> outer = ends(pattern.outline());
        Set<Point> meetings = new HashSet<>();
        met.forEach((point, count) -> {
            if (count > 2 || count == 2 && outer.contains(point)) {
                meetings.add(point);
            }
        });
        return meetings;
    }

    private static Set<Point> ends(CurvePath path) {
        Set<Point> ends = new HashSet<>();
        path.segments().forEach(segment -> ends.add(segment.to()));
        return ends;
    }

    private static List<EdgeShape> inner(CutPattern pattern, Set<Point> meetings) {
        List<EdgeShape> inner = new ArrayList<>();
        for (CurvePath line : pattern.inner()) {
            if (!line.closed()) {
                parts(line, line.start(), line.segments(), meetings).forEach(part -> inner.add(EdgeShape.of(part)));
            }
        }
        return inner;
    }

    /** Around a piece, beginning at some meeting. */
    private static List<EdgeShape> edges(CurvePath outline, Set<Point> meetings) {
        int from = 0;
        while (from < outline.segments().size() && !meetings.contains(outline.startOf(from))) {
            from++;
        }
        if (from == outline.segments().size()) {
            return List.of();
        }
        List<Segment> around = new ArrayList<>(
                outline.segments().subList(from, outline.segments().size()));
        around.addAll(outline.segments().subList(0, from));
        List<EdgeShape> edges = new ArrayList<>();
        for (CurvePath part : parts(outline, outline.startOf(from), around, meetings)) {
            if (part.start().distanceTo(part.end()) > 1e-6) {
                edges.add(EdgeShape.of(part));
            }
        }
        return edges;
    }

    private static List<CurvePath> parts(CurvePath path, Point from, List<Segment> segments, Set<Point> meetings) {
        List<CurvePath> parts = new ArrayList<>();
        Point start = from;
        List<Segment> run = new ArrayList<>();
        for (Segment segment : segments) {
            run.add(segment);
            if (meetings.contains(segment.to())) {
                parts.add(new CurvePath(start, run, false));
                start = segment.to();
                run = new ArrayList<>();
            }
        }
        if (!run.isEmpty()) {
            parts.add(new CurvePath(start, run, false));
        }
        return parts;
    }

    private static double[] nearestEdges(List<EdgeShape> edges) {
        double nearest = LOOKED_TO_MM;
        double area = 0;
        for (int i = 0; i < edges.size(); i++) {
            EdgeShape turned = edges.get(i).turned();
            for (int j = 0; j < i; j++) {
                for (EdgeShape one : List.of(edges.get(i), turned)) {
                    double[] felt = felt(one, edges.get(j), nearest);
                    if (felt[0] < nearest) {
                        nearest = felt[0];
                        area = felt[1];
                    }
                }
            }
        }
        return new double[] {nearest, area};
    }

    private static double[] nearestPieces(List<List<EdgeShape>> pieces) {
        double nearest = LOOKED_TO_MM;
        double area = 0;
        for (int i = 0; i < pieces.size(); i++) {
            for (int j = 0; j < i; j++) {
                List<EdgeShape> one = pieces.get(i);
                List<EdgeShape> other = pieces.get(j);
                for (int turn = 0; one.size() == other.size() && turn < one.size(); turn++) {
                    double[] felt = felt(one, other, turn, nearest);
                    if (felt[0] < nearest) {
                        nearest = felt[0];
                        area = felt[1];
                    }
                }
            }
        }
        return new double[] {nearest, area};
    }

    /** The edge that fits worst, and the area between all. */
    private static double[] felt(List<EdgeShape> one, List<EdgeShape> other, int turn, double limit) {
        double worst = 0;
        double area = 0;
        for (int k = 0; k < one.size() && worst < limit; k++) {
            double[] felt = felt(one.get(k), other.get((k + turn) % other.size()), limit);
            worst = Math.max(worst, felt[0]);
            area += felt[1];
        }
        return new double[] {worst, area};
    }

    private static double[] felt(EdgeShape one, EdgeShape other, double limit) {
        if (!one.couldBeWithin(other.marks, 0, limit) || !one.mayFit(other, limit)) {
            return new double[] {Double.POSITIVE_INFINITY, 0};
        }
        double[] meanMm = new double[1];
        double distance = one.distanceTo(other, limit, meanMm);
        return new double[] {distance, meanMm[0] * one.lengthMm()};
    }
}
