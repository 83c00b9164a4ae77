package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.SegmentDistance;
import puzzleworkshop.geometry.path.SegmentGrid;

/**
 * Looks whether any two lines of a mesh cross or come closer than the wood allows, an edge to itself included (its
 * neck). Every curve is taken as a polyline within {@value #FLATTENING_MM} mm of it and the limit raised by twice
 * that, so a mesh that passes has the distance in truth.
 *
 * <p>Near a common point lines must of course come close: there the distance must grow with at least half the distance
 * from the point (they part by 30° or more); along one edge with at least half the way between two places on it.
 * Neighbours are found in a square grid of buckets.
 */
public final class Clearance {

    static final double FLATTENING_MM = 0.02;
    static final double PARTING = 0.5;
    /** A customer's shape may have corners as sharp as 30°, its own lookout. */
    private static final double PARTING_IN_SHAPES = 0.25;
    /** Stretches that follow each other are this far apart by rounding alone. */
    private static final double ROUNDING_MM = 1e-6;

    /** Two edges that cross (distance zero) or come too close; the same edge twice for a neck. */
    public record Trouble(int edge, int other, Point where, double distanceMm) {}

    private final Mesh mesh;
    private final double limit;
    // one entry per straight stretch
    private final int count;
    private final double[] ax;
    private final double[] ay;
    private final double[] bx;
    private final double[] by;
    private final double[] way;
    private final int[] edge;
    private final SegmentGrid buckets;
    private double smallestGap;

    public Clearance(Mesh mesh, double closestLinesMm) {
        this.mesh = mesh;
        this.limit = closestLinesMm + 2 * FLATTENING_MM;
        List<List<Point>> flat = mesh.edges.stream()
                .map(each -> each.path().flattened(FLATTENING_MM))
                .toList();
        count = flat.stream().mapToInt(points -> points.size() - 1).sum();
        ax = new double[count];
        ay = new double[count];
        bx = new double[count];
        by = new double[count];
        way = new double[count];
        edge = new int[count];
        fill(flat);
        buckets = new SegmentGrid(ax, ay, bx, by, count, limit);
    }

    private void fill(List<List<Point>> flat) {
        int i = 0;
        for (int number = 0; number < flat.size(); number++) {
            double gone = 0;
            Point a = flat.get(number).getFirst();
            for (Point b : flat.get(number).subList(1, flat.get(number).size())) {
                ax[i] = a.xMm();
                ay[i] = a.yMm();
                bx[i] = b.xMm();
                by[i] = b.yMm();
                way[i] = gone;
                edge[i] = mesh.edges.get(number).id;
                gone += length(i);
                i++;
                a = b;
            }
        }
    }

    /** Smallest distance seen so far between lines that do not meet, where it is below three times the limit. */
    public double smallestGapMm() {
        return smallestGap;
    }

    /** Looks at the edges in the set against all edges; one trouble for each pair of edges, the closest place. */
    public List<Trouble> find(BitSet wanted) {
        smallestGap = 3 * limit;
        List<Trouble> found = new ArrayList<>();
        int[] seenBy = new int[count];
        Arrays.fill(seenBy, -1);
        for (int i = 0; i < count; i++) {
            if (wanted.get(edge[i])) {
                lookAround(i, wanted, seenBy, found);
            }
        }
        return found;
    }

    private void lookAround(int i, BitSet wanted, int[] seenBy, List<Trouble> found) {
        seenBy[i] = i;
        buckets.near(i, limit, j -> {
            // done already, or to be done from the other side
            if (seenBy[j] != i && !(j < i && wanted.get(edge[j]))) {
                seenBy[j] = i;
                compare(i, j, found);
            }
        });
    }

    private void compare(int i, int j, List<Trouble> found) {
        if (Math.max(ax[i], bx[i]) + limit < Math.min(ax[j], bx[j])
                || Math.max(ax[j], bx[j]) + limit < Math.min(ax[i], bx[i])
                || Math.max(ay[i], by[i]) + limit < Math.min(ay[j], by[j])
                || Math.max(ay[j], by[j]) + limit < Math.min(ay[i], by[i])) {
            return;
        }
        double needed = needed(i, j);
        if (needed <= ROUNDING_MM) {
            return;
        }
        double distance = SegmentDistance.between(ax[i], ay[i], bx[i], by[i], ax[j], ay[j], bx[j], by[j]);
        if (needed >= limit) {
            smallestGap = Math.min(smallestGap, distance);
        }
        if (distance < needed) {
            note(new Trouble(edge[i], edge[j], Point.of((ax[i] + bx[i]) / 2, (ay[i] + by[i]) / 2), distance), found);
        }
    }

    private static void note(Trouble trouble, List<Trouble> found) {
        for (int k = found.size() - 1; k >= Math.max(0, found.size() - 40); k--) {
            Trouble other = found.get(k);
            if (other.edge() == trouble.edge() && other.other() == trouble.other()) {
                if (trouble.distanceMm() < other.distanceMm()) {
                    found.set(k, trouble);
                }
                return;
            }
        }
        found.add(trouble);
    }

    /** How far apart these two stretches must be. */
    private double needed(int i, int j) {
        Mesh.Edge one = mesh.edges.get(edge[i]);
        Mesh.Edge two = mesh.edges.get(edge[j]);
        double needed = limit;
        double parting = one.kind == Mesh.Kind.SHAPE && two.kind == Mesh.Kind.SHAPE ? PARTING_IN_SHAPES : PARTING;
        if (one == two) {
            int first = Math.min(i, j);
            int second = Math.max(i, j);
            needed = Math.min(needed, parting * (way[second] - way[first] - length(first)));
            if (one.from == one.to) {
                // a ring: the other way round counts as well
                double whole = way[lastOf(second)] + length(lastOf(second));
                needed = Math.min(needed, parting * (whole - way[second] - length(second) + way[first]));
            }
            return needed;
        }
        if (one.from == two.from || one.from == two.to) {
            needed = Math.min(needed, parting * farther(one.from, i, j));
        }
        if (one.to == two.from || one.to == two.to) {
            needed = Math.min(needed, parting * farther(one.to, i, j));
        }
        return needed;
    }

    private int lastOf(int stretch) {
        int last = stretch;
        while (last + 1 < count && edge[last + 1] == edge[stretch]) {
            last++;
        }
        return last;
    }

    /** How far the farther of two stretches is from a point. */
    private double farther(int point, int i, int j) {
        Point p = mesh.points.get(point);
        return Math.max(
                SegmentDistance.toPoint(ax[i], ay[i], bx[i], by[i], p.xMm(), p.yMm()),
                SegmentDistance.toPoint(ax[j], ay[j], bx[j], by[j], p.xMm(), p.yMm()));
    }

    private double length(int i) {
        double dx = bx[i] - ax[i];
        double dy = by[i] - ay[i];
        return Math.sqrt(dx * dx + dy * dy);
    }
}
