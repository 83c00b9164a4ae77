package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.SegmentDistance;

/**
 * The lines laid so far, to ask whether a further edge keeps its distance from them and from itself: the rules of
 * {@link Clearance}, one edge at a time. Whole patterns are still judged by {@link Clearance}.
 */
final class Occupied {

    /** @param stretches the box around each stretch, from which most pairs of stretches are seen to be apart */
    private record Laid(Mesh.Edge edge, double[] x, double[] y, Bounds bounds, Boxes stretches) {}

    private record Boxes(double[] left, double[] right, double[] top, double[] bottom) {

        static Boxes of(double[] x, double[] y) {
            int count = x.length - 1;
            Boxes boxes = new Boxes(new double[count], new double[count], new double[count], new double[count]);
            for (int i = 0; i < count; i++) {
                boxes.left[i] = Math.min(x[i], x[i + 1]);
                boxes.right[i] = Math.max(x[i], x[i + 1]);
                boxes.top[i] = Math.min(y[i], y[i + 1]);
                boxes.bottom[i] = Math.max(y[i], y[i + 1]);
            }
            return boxes;
        }

        boolean apart(int i, Boxes other, int j, double limit) {
            return right[i] + limit < other.left[j]
                    || other.right[j] + limit < left[i]
                    || bottom[i] + limit < other.top[j]
                    || other.bottom[j] + limit < top[i];
        }
    }

    private final Mesh mesh;
    private final double limit;
    private final double side;
    private final Map<Long, List<Laid>> cells = new HashMap<>();

    /** @param cellMm side of the squares that laid edges are looked up by; about a piece */
    Occupied(Mesh mesh, double closestLinesMm, double cellMm) {
        this.mesh = mesh;
        this.limit = closestLinesMm + 2 * Clearance.FLATTENING_MM;
        this.side = cellMm;
    }

    void add(Mesh.Edge edge, List<Point> flat) {
        Laid laid = laid(edge, flat);
        for (long cell : cellsOf(laid)) {
            cells.computeIfAbsent(cell, c -> new ArrayList<>(8)).add(laid);
        }
    }

    /** Whether an edge drawn like this keeps its distance. */
    boolean hasRoomFor(Mesh.Edge edge, List<Point> flat) {
        Laid one = laid(edge, flat);
        if (!keepsFromItself(one)) {
            return false;
        }
        List<Laid> seen = new ArrayList<>();
        for (long cell : cellsOf(one)) {
            for (Laid other : cells.getOrDefault(cell, List.of())) {
                if (other.edge() != edge && !seen.contains(other)) {
                    seen.add(other);
                    if (!keeps(one, other)) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private static Laid laid(Mesh.Edge edge, List<Point> flat) {
        double[] x = new double[flat.size()];
        double[] y = new double[flat.size()];
        double minX = Double.POSITIVE_INFINITY;
        double minY = Double.POSITIVE_INFINITY;
        double maxX = Double.NEGATIVE_INFINITY;
        double maxY = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < x.length; i++) {
            x[i] = flat.get(i).xMm();
            y[i] = flat.get(i).yMm();
            minX = Math.min(minX, x[i]);
            maxX = Math.max(maxX, x[i]);
            minY = Math.min(minY, y[i]);
            maxY = Math.max(maxY, y[i]);
        }
        return new Laid(edge, x, y, new Bounds(minX, minY, maxX, maxY), Boxes.of(x, y));
    }

    private long[] cellsOf(Laid laid) {
        Bounds b = laid.bounds().grownBy(limit / 2);
        int fromX = (int) Math.floor(b.minX() / side);
        int toX = (int) Math.floor(b.maxX() / side);
        int fromY = (int) Math.floor(b.minY() / side);
        int toY = (int) Math.floor(b.maxY() / side);
        long[] cellsOfIt = new long[(toX - fromX + 1) * (toY - fromY + 1)];
        int n = 0;
        for (int cy = fromY; cy <= toY; cy++) {
            for (int cx = fromX; cx <= toX; cx++) {
                cellsOfIt[n++] = (long) cy << 32 | cx & 0xFFFFFFFFL;
            }
        }
        return cellsOfIt;
    }

    private boolean keepsFromItself(Laid a) {
        double[] way = new double[a.x().length];
        for (int i = 1; i < way.length; i++) {
            double dx = a.x()[i] - a.x()[i - 1];
            double dy = a.y()[i] - a.y()[i - 1];
            way[i] = way[i - 1] + Math.sqrt(dx * dx + dy * dy);
        }
        for (int i = 0; i + 1 < way.length; i++) {
            for (int j = i + 2; j + 1 < way.length; j++) {
                double needed = Math.min(limit, Clearance.PARTING * (way[j] - way[i + 1]));
                if (needed > 1e-6 && distance(a, i, a, j, needed) < needed) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean keeps(Laid a, Laid b) {
        Mesh.Edge one = a.edge();
        Mesh.Edge two = b.edge();
        Point first = one.from == two.from || one.from == two.to ? mesh.points.get(one.from) : null;
        Point second = one.to == two.from || one.to == two.to ? mesh.points.get(one.to) : null;
        Bounds near = b.bounds().grownBy(limit);
        if (Math.max(a.bounds().minX(), near.minX()) > Math.min(a.bounds().maxX(), near.maxX())
                || Math.max(a.bounds().minY(), near.minY())
                        > Math.min(a.bounds().maxY(), near.maxY())) {
            return true;
        }
        for (int i = 0; i + 1 < a.x().length; i++) {
            if (a.stretches().right[i] < near.minX()
                    || a.stretches().left[i] > near.maxX()
                    || a.stretches().bottom[i] < near.minY()
                    || a.stretches().top[i] > near.maxY()) {
                continue;
            }
            for (int j = 0; j + 1 < b.x().length; j++) {
                if (a.stretches().apart(i, b.stretches(), j, limit)) {
                    continue;
                }
                double needed = limit;
                if (first != null) {
                    needed = Math.min(needed, Clearance.PARTING * farther(first, a, i, b, j));
                }
                if (second != null) {
                    needed = Math.min(needed, Clearance.PARTING * farther(second, a, i, b, j));
                }
                if (needed > 1e-6 && distance(a, i, b, j, needed) < needed) {
                    return false;
                }
            }
        }
        return true;
    }

    private static double farther(Point p, Laid a, int i, Laid b, int j) {
        return Math.max(
                SegmentDistance.toPoint(a.x()[i], a.y()[i], a.x()[i + 1], a.y()[i + 1], p.xMm(), p.yMm()),
                SegmentDistance.toPoint(b.x()[j], b.y()[j], b.x()[j + 1], b.y()[j + 1], p.xMm(), p.yMm()));
    }

    private static double distance(Laid a, int i, Laid b, int j, double limit) {
        if (a.stretches().apart(i, b.stretches(), j, limit)) {
            return limit;
        }
        return SegmentDistance.between(
                a.x()[i], a.y()[i], a.x()[i + 1], a.y()[i + 1], b.x()[j], b.y()[j], b.x()[j + 1], b.y()[j + 1]);
    }
}
