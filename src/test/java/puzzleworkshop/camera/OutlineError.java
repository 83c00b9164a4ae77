package puzzleworkshop.camera;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.camera.model.RigidFit;

/**
 * How far a found outline is from the true one, after the best turn and shift (no mirror): distances between both edges, each
 * sampled every half millimetre, in both directions. JTS shrinks and measures; it has no part in the finding.
 *
 * @param mean of all distances, mm
 * @param p95 exceeded by one in twenty
 * @param largest anywhere
 * @param outside farthest that the found outline, shrunk by its uncertainty, lies outside the true one
 */
public record OutlineError(double mean, double p95, double largest, double outside) {

    private static final GeometryFactory SHAPES = new GeometryFactory();
    private static final double STEP = 0.5;

    public static OutlineError between(double[] truth, double[] found, double uncertainty) {
        double[] best = null;
        double least = Double.MAX_VALUE;
        for (int turn = 0; turn < 24; turn++) {
            double[] moved = settled(truth, turned(truth, found, turn * Math.PI / 12), 4, 4);
            double error = distances(moved, truth, 4)[1];
            if (error < least) {
                least = error;
                best = moved;
            }
        }
        best = settled(truth, best, 40, 1);
        double[] there = distances(best, truth, STEP);
        double[] back = distances(truth, best, STEP);
        double[] all = new double[there.length + back.length - 4];
        System.arraycopy(there, 2, all, 0, there.length - 2);
        System.arraycopy(back, 2, all, there.length - 2, back.length - 2);
        java.util.Arrays.sort(all);
        double mean = 0;
        for (double d : all) {
            mean += d / all.length;
        }
        return new OutlineError(
                mean, all[(int) (0.95 * (all.length - 1))], all[all.length - 1], outside(truth, best, uncertainty));
    }

    private static double[] turned(double[] truth, double[] found, double angle) {
        double[] a = middle(truth);
        double[] b = middle(found);
        double[] moved = new double[found.length];
        for (int i = 0; i < found.length; i += 2) {
            double x = found[i] - b[0];
            double y = found[i + 1] - b[1];
            moved[i] = a[0] + Math.cos(angle) * x - Math.sin(angle) * y;
            moved[i + 1] = a[1] + Math.sin(angle) * x + Math.cos(angle) * y;
        }
        return moved;
    }

    private static double[] middle(double[] ring) {
        Coordinate c = polygon(ring).getCentroid().getCoordinate();
        return new double[] {c.x, c.y};
    }

    /** Iterated closest points, each edge to the other in turn. */
    private static double[] settled(double[] truth, double[] found, int rounds, double step) {
        double[] now = found;
        for (int round = 0; round < rounds; round++) {
            double[] points = sampled(now, step);
            double[] others = sampled(truth, step);
            double[] from = new double[points.length + others.length];
            double[] to = new double[from.length];
            double[] near = new double[2];
            for (int i = 0; i < points.length; i += 2) {
                nearest(truth, points[i], points[i + 1], near);
                from[i] = points[i];
                from[i + 1] = points[i + 1];
                to[i] = near[0];
                to[i + 1] = near[1];
            }
            for (int i = 0; i < others.length; i += 2) {
                nearest(now, others[i], others[i + 1], near);
                from[points.length + i] = near[0];
                from[points.length + i + 1] = near[1];
                to[points.length + i] = others[i];
                to[points.length + i + 1] = others[i + 1];
            }
            RigidFit fit = RigidFit.rigid(from, to);
            double[] next = new double[now.length];
            for (int i = 0; i < now.length; i += 2) {
                next[i] = fit.x(now[i], now[i + 1]);
                next[i + 1] = fit.y(now[i], now[i + 1]);
            }
            now = next;
        }
        return now;
    }

    /** Largest, mean, then every distance from points of one ring to the edge of the other. */
    private static double[] distances(double[] ring, double[] to, double step) {
        double[] points = sampled(ring, step);
        double[] all = new double[points.length / 2 + 2];
        double[] near = new double[2];
        for (int i = 0; i < points.length; i += 2) {
            nearest(to, points[i], points[i + 1], near);
            double d = Math.hypot(near[0] - points[i], near[1] - points[i + 1]);
            all[i / 2 + 2] = d;
            all[0] = Math.max(all[0], d);
            all[1] += d / (points.length / 2);
        }
        return all;
    }

    private static double[] sampled(double[] ring, double step) {
        List<Double> points = new java.util.ArrayList<>();
        int n = ring.length / 2;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            double dx = ring[2 * j] - ring[2 * i];
            double dy = ring[2 * j + 1] - ring[2 * i + 1];
            int count = Math.max(1, (int) Math.ceil(Math.hypot(dx, dy) / step));
            for (int k = 0; k < count; k++) {
                points.add(ring[2 * i] + dx * k / count);
                points.add(ring[2 * i + 1] + dy * k / count);
            }
        }
        return points.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static void nearest(double[] ring, double x, double y, double[] out) {
        double least = Double.MAX_VALUE;
        int n = ring.length / 2;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            double ax = ring[2 * i];
            double ay = ring[2 * i + 1];
            double dx = ring[2 * j] - ax;
            double dy = ring[2 * j + 1] - ay;
            double t = Math.clamp(((x - ax) * dx + (y - ay) * dy) / Math.max(1e-12, dx * dx + dy * dy), 0, 1);
            double px = ax + t * dx;
            double py = ay + t * dy;
            double d = (x - px) * (x - px) + (y - py) * (y - py);
            if (d < least) {
                least = d;
                out[0] = px;
                out[1] = py;
            }
        }
    }

    private static double outside(double[] truth, double[] found, double uncertainty) {
        Geometry shrunk = polygon(found).buffer(0).buffer(-uncertainty);
        Geometry wood = polygon(truth).buffer(0);
        double far = 0;
        for (Coordinate c : shrunk.getCoordinates()) {
            far = Math.max(far, wood.distance(SHAPES.createPoint(c)));
        }
        return far;
    }

    public static Polygon polygon(double[] ring) {
        Coordinate[] closed = new Coordinate[ring.length / 2 + 1];
        for (int i = 0; i < closed.length; i++) {
            int j = i % (ring.length / 2);
            closed[i] = new Coordinate(ring[2 * j], ring[2 * j + 1]);
        }
        LinearRing shell = SHAPES.createLinearRing(closed);
        return SHAPES.createPolygon(shell);
    }
}
