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

/**
 * Points where lines meet, and the stretches of line between them, each held once. Lines (runs of edges the laser
 * follows without a stop) and pieces (the faces) are read off it.
 */
public final class Mesh {

    enum Kind {
        INNER,
        OUTLINE,
        SHAPE
    }

    /** How an edge is drawn; the calmer, the less of its variation and size. */
    @FunctionalInterface
    interface Recipe {
        /** @param calm 0 as the seed wants it, up to the edge's calmest */
        CurvePath draw(int calm);
    }

    /** How an edge is drawn where several drawings are tried (design 2). */
    @FunctionalInterface
    interface Variant {
        /**
         * @param attempt which drawing, from 0
         * @param life 1 with all its variation, 0 with none
         */
        CurvePath draw(int attempt, double life);
    }

    /** One stretch between two points of the mesh; its curve may be drawn again while the pattern is being made. */
    static final class Edge {
        final int id;
        final int from;
        final int to;
        final Kind kind;
        private CurvePath path;
        private Recipe recipe;
        private Variant variant;
        private int calmest;
        private int calm;

        Edge(int id, int from, int to, Kind kind) {
            this.id = id;
            this.from = from;
            this.to = to;
            this.kind = kind;
        }

        CurvePath path() {
            return path;
        }

        void draw(CurvePath drawn) {
            path = drawn;
        }

        /** Draws it by a recipe now, and more calmly when asked. */
        void draw(Recipe by, int calmestOfAll) {
            recipe = by;
            calmest = calmestOfAll;
            path = by.draw(0);
        }

        void varies(Variant by) {
            variant = by;
        }

        CurvePath variant(int attempt, double life) {
            return variant.draw(attempt, life);
        }

        /** Draws it as calmly as can be. */
        void calmest() {
            calm = calmest;
            path = recipe.draw(calm);
        }

        /** Draws it one step calmer; false when it is as calm as can be, or fixed. */
        boolean calmDown() {
            if (calm >= calmest) {
                return false;
            }
            calm++;
            path = recipe.draw(calm);
            return true;
        }
    }

    /** An edge in the direction it is followed. */
    public record Step(Edge edge, boolean backwards) {

        int start() {
            return backwards ? edge.to : edge.from;
        }

        int end() {
            return backwards ? edge.from : edge.to;
        }

        CurvePath path() {
            return backwards ? edge.path().reversed() : edge.path();
        }
    }

    final List<Point> points = new ArrayList<>();
    public final List<Edge> edges = new ArrayList<>();
    /** Inner lines, each a run of steps. */
    public final List<List<Step>> lines = new ArrayList<>();
    /** By edge id, for edges around a personal shape: its name. */
    final Map<Integer, String> shapeNames = new HashMap<>();
    /** Ids of edges around a divided shape: as pieces on both sides meet in them, they are compared as inner ones are. */
    final Set<Integer> divided = new HashSet<>();
    /** The outline, clockwise as seen. */
    public final List<Step> outline = new ArrayList<>();

    /** Whether two pieces meet in an edge that must not be taken for another: all but the outline and a whole shape's. */
    boolean isCompared(Edge edge) {
        return edge.kind == Kind.INNER || divided.contains(edge.id);
    }

    int addPoint(Point point) {
        points.add(point);
        return points.size() - 1;
    }

    Edge addEdge(int from, int to, Kind kind) {
        Edge edge = new Edge(edges.size(), from, to, kind);
        edges.add(edge);
        return edge;
    }

    public static CurvePath join(List<Step> run, boolean closed) {
        List<Segment> segments = new ArrayList<>();
        for (Step step : run) {
            segments.addAll(step.path().segments());
        }
        return new CurvePath(run.getFirst().path().start(), segments, closed);
    }
}
