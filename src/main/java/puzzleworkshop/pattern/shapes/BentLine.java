package puzzleworkshop.pattern.shapes;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;

/**
 * A line that runs along another with gentle bends, by which it can be told from every other, as straight lines have them too:
 * sines over its length, moved out along its normals. Ends and the directions in which it leaves and arrives stay, so that
 * what meets it there still does. It stays within {@value #FARTHEST_MM} mm, about as near as a print is stuck.
 */
public final class BentLine {

    private static final double FARTHEST_MM = 0.9;
    private static final double SHARE = 0.14;
    private static final double KNOT_MM = 1.2;
    private static final int FEWEST_KNOTS = 6;
    private static final int MOST_KNOTS = 60;
    private static final double FLATTENING_MM = 0.005;

    private BentLine() {}

    /** @param sizes of half, whole, one and a half… waves over its length; together about from -1 to 1 */
    public static CurvePath of(CurvePath along, double[] sizes) {
        double length = along.lengthMm();
        double most = Math.min(FARTHEST_MM, SHARE * length);
        List<Point> knots = knots(along, Math.clamp(Math.round(length / KNOT_MM), FEWEST_KNOTS, MOST_KNOTS));
        int last = knots.size() - 1;
        List<Point> moved = new ArrayList<>(knots);
        for (int k = 1; k < last; k++) {
            double t = (double) k / last;
            double swing = 0;
            for (int i = 0; i < sizes.length; i++) {
                swing += sizes[i] * StrictMath.sin((i + 1) * Math.PI * t);
            }
            // the window leaves the directions at both ends as they are
            double by = most * StrictMath.sin(Math.PI * t) * Math.clamp(swing, -1, 1);
            Point before = knots.get(k - 1);
            Point after = knots.get(k + 1);
            double across = before.distanceTo(after);
            moved.set(
                    k,
                    knots.get(k)
                            .plus(
                                    -by * (after.yMm() - before.yMm()) / across,
                                    by * (after.xMm() - before.xMm()) / across));
        }
        return smooth(moved, along);
    }

    /** Points along a path, evenly apart, its ends among them. */
    private static List<Point> knots(CurvePath path, int count) {
        List<Point> flat = path.flattened(FLATTENING_MM);
        double step = 0;
        for (int i = 1; i < flat.size(); i++) {
            step += flat.get(i - 1).distanceTo(flat.get(i)) / count;
        }
        List<Point> knots = new ArrayList<>();
        knots.add(path.start());
        double gone = 0;
        for (int i = 1; i < flat.size() && knots.size() < count; i++) {
            double part = flat.get(i - 1).distanceTo(flat.get(i));
            while (knots.size() < count && gone + part >= knots.size() * step) {
                knots.add(flat.get(i - 1).towards(flat.get(i), (knots.size() * step - gone) / part));
            }
            gone += part;
        }
        knots.add(path.end());
        return knots;
    }

    /** Through all points, by the tangents of their neighbours (Catmull and Rom 1974), leaving and arriving as the path does. */
    private static CurvePath smooth(List<Point> points, CurvePath like) {
        List<Segment> segments = new ArrayList<>();
        int last = points.size() - 1;
        for (int k = 0; k < last; k++) {
            Point a = points.get(k);
            Point b = points.get(k + 1);
            double third = a.distanceTo(b) / 3;
            Point first = k == 0 ? a.plus(third * leaving(like)[0], third * leaving(like)[1]) : handle(points, k, 1);
            Point second = k + 1 == last
                    ? b.plus(-third * arriving(like)[0], -third * arriving(like)[1])
                    : handle(points, k + 1, -1);
            segments.add(new Segment.Cubic(first, second, b));
        }
        return new CurvePath(points.getFirst(), segments, false);
    }

    private static Point handle(List<Point> points, int k, int way) {
        Point before = points.get(k - 1);
        Point after = points.get(k + 1);
        return points.get(k).plus(way * (after.xMm() - before.xMm()) / 6, way * (after.yMm() - before.yMm()) / 6);
    }

    private static double[] leaving(CurvePath path) {
        return unit(path.segments().getFirst().velocity(path.start(), 0));
    }

    private static double[] arriving(CurvePath path) {
        int last = path.segments().size() - 1;
        return unit(path.segments().get(last).velocity(path.startOf(last), 1));
    }

    private static double[] unit(double[] v) {
        double speed = Math.sqrt(v[0] * v[0] + v[1] * v[1]);
        return speed == 0 ? v : new double[] {v[0] / speed, v[1] / speed};
    }
}
