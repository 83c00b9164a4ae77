package puzzleworkshop.pattern.edges;

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
 * number of edges lie upon each other; what counts of a piece is its edge that fits worst. The play of the cut is a kerf, by
 * which both sides of a line are apart: up to there nothing is felt, so each figure stands beside what is left beyond it.
 * Two that differ by no more than the play could be taken for each other.
 *
 * @param edges of the two edges most alike
 * @param pieces of the two pieces most alike: their edge that fits worst, and the area between all their edges together
 * @param playMm the kerf
 */
public record PieceLikeness(Felt edges, Felt pieces, double playMm) {

    /**
     * How far two are apart where they come nearest.
     *
     * @param mm greatest distance; at most {@link #LOOKED_TO_MM}
     * @param areaMm2 area between them
     * @param beyondMm2 the part of it that a hand feels: what is left when the play is taken off everywhere
     */
    public record Felt(double mm, double areaMm2, double beyondMm2) {

        /** What is left of the greatest distance beyond the play; zero when nothing tells the two apart. */
        public double beyondMm(double playMm) {
            return Math.max(0, mm - playMm);
        }

        private Felt and(Felt other) {
            return new Felt(Math.max(mm, other.mm), areaMm2 + other.areaMm2, beyondMm2 + other.beyondMm2);
        }
    }

    private static final Felt NOTHING = new Felt(0, 0, 0);
    private static final Felt FAR = new Felt(Double.POSITIVE_INFINITY, 0, 0);

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
        double play = pattern.spec().kerf().mm();
        return new PieceLikeness(nearestEdges(inner(pattern, meetings), play), nearestPieces(pieces, play), play);
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

    private static Felt nearestEdges(List<EdgeShape> edges, double play) {
        Felt nearest = new Felt(LOOKED_TO_MM, 0, 0);
        for (int i = 0; i < edges.size(); i++) {
            EdgeShape turned = edges.get(i).turned();
            for (int j = 0; j < i; j++) {
                for (EdgeShape one : List.of(edges.get(i), turned)) {
                    Felt felt = felt(one, edges.get(j), nearest.mm, play);
                    nearest = felt.mm < nearest.mm ? felt : nearest;
                }
            }
        }
        return nearest;
    }

    private static Felt nearestPieces(List<List<EdgeShape>> pieces, double play) {
        Felt nearest = new Felt(LOOKED_TO_MM, 0, 0);
        for (int i = 0; i < pieces.size(); i++) {
            for (int j = 0; j < i; j++) {
                List<EdgeShape> one = pieces.get(i);
                List<EdgeShape> other = pieces.get(j);
                for (int turn = 0; one.size() == other.size() && turn < one.size(); turn++) {
                    Felt felt = felt(one, other, turn, nearest.mm, play);
                    nearest = felt.mm < nearest.mm ? felt : nearest;
                }
            }
        }
        return nearest;
    }

    /** The edge that fits worst, and the area between all. */
    private static Felt felt(List<EdgeShape> one, List<EdgeShape> other, int turn, double limit, double play) {
        Felt all = NOTHING;
        for (int k = 0; k < one.size() && all.mm < limit; k++) {
            all = all.and(felt(one.get(k), other.get((k + turn) % other.size()), limit, play));
        }
        return all;
    }

    private static Felt felt(EdgeShape one, EdgeShape other, double limit, double play) {
        if (!one.couldBeWithin(other, limit)) {
            return FAR;
        }
        double[] apart = new double[EdgeShape.POINTS];
        double distance = BestMotion.distanceMm(one, other, limit, apart);
        double all = 0;
        double beyond = 0;
        for (double gap : apart) {
            all += gap / apart.length;
            beyond += Math.max(0, gap - play) / apart.length;
        }
        return new Felt(distance, all * one.lengthMm(), beyond * one.lengthMm());
    }
}
