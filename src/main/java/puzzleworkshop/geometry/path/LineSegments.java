package puzzleworkshop.geometry.path;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntConsumer;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Refused;

/**
 * All lines of a file as short straight stretches in flat arrays, with where each came from, and a square grid of
 * buckets to find what lies near. Built for hundreds of thousands of stretches: no object for any of them.
 */
public final class LineSegments {

    static final double FLATTENING_MM = 0.01;
    /** Longer straight lines are divided, so that a bucket's neighbours stay few. */
    private static final double LONGEST_MM = 5;

    /** The largest puzzle drawn piece by piece needs a twentieth; very many lines on one spot would never end. */
    private static final long MOST_COMPARED = 150_000_000L;

    private static final int MOST = 2_000_000;

    public int count;
    public double[] ax = new double[4096];
    public double[] ay = new double[4096];
    public double[] bx = new double[4096];
    public double[] by = new double[4096];
    /** Way along its line to the stretch's start, mm. */
    public double[] way = new double[4096];

    public double[] length = new double[4096];
    public int[] line = new int[4096];
    public int[] segment = new int[4096];
    /** Parameters on the segment. */
    public double[] t0 = new double[4096];

    public double[] t1 = new double[4096];
    /** First stretch of each line; one more than lines. */
    public final int[] firstOf;

    private final SegmentGrid buckets;

    public LineSegments(List<CurvePath> lines) {
        firstOf = new int[lines.size() + 1];
        for (int i = 0; i < lines.size(); i++) {
            firstOf[i] = count;
            add(i, lines.get(i));
        }
        firstOf[lines.size()] = count;

        double total = 0;
        for (int i = 0; i < count; i++) {
            total += length[i];
        }
        double even = 2 * total / Math.max(1, count);
        buckets = new SegmentGrid(ax, ay, bx, by, count, Math.max(even, 0.05));
        buckets.limitTo(MOST_COMPARED);
    }

    private void add(int number, CurvePath path) {
        Point from = path.start();
        double gone = 0;
        for (int s = 0; s < path.segments().size(); s++) {
            Segment part = path.segments().get(s);
            int steps = part.steps(from, FLATTENING_MM);
            double hull = part instanceof Segment.Line ? part.lengthMm(from) : 0;
            steps = Math.clamp((long) Math.ceil(hull / LONGEST_MM), steps, 100_000);
            Point a = from;
            for (int k = 1; k <= steps; k++) {
                Point b = k == steps ? part.to() : part.at(from, (double) k / steps);
                double distance = a.distanceTo(b);
                if (distance > 0) {
                    store(number, s, (k - 1.0) / steps, (double) k / steps, a, b, gone, distance);
                    gone += distance;
                }
                a = b;
            }
            from = part.to();
        }
    }

    private void store(int number, int part, double from, double to, Point a, Point b, double gone, double distance) {
        if (count == MOST) {
            throw new Refused("geometry.too_many_stretches", MOST);
        }
        if (count == line.length) {
            grow();
        }
        ax[count] = a.xMm();
        ay[count] = a.yMm();
        bx[count] = b.xMm();
        by[count] = b.yMm();
        way[count] = gone;
        length[count] = distance;
        line[count] = number;
        segment[count] = part;
        t0[count] = from;
        t1[count] = to;
        count++;
    }

    private void grow() {
        int more = count * 2;
        ax = Arrays.copyOf(ax, more);
        ay = Arrays.copyOf(ay, more);
        bx = Arrays.copyOf(bx, more);
        by = Arrays.copyOf(by, more);
        way = Arrays.copyOf(way, more);
        length = Arrays.copyOf(length, more);
        line = Arrays.copyOf(line, more);
        segment = Arrays.copyOf(segment, more);
        t0 = Arrays.copyOf(t0, more);
        t1 = Arrays.copyOf(t1, more);
    }

    public double lengthOf(int number) {
        int last = firstOf[number + 1] - 1;
        return last < firstOf[number] ? 0 : way[last] + length[last];
    }

    /** The place at a way along a line. */
    public Point placeAt(int number, double along) {
        int i = stretchAt(number, along);
        double share = Math.clamp((along - way[i]) / length[i], 0, 1);
        return Point.of(ax[i] + share * (bx[i] - ax[i]), ay[i] + share * (by[i] - ay[i]));
    }

    /** The stretch of a line that holds a way along it. */
    public int stretchAt(int number, double along) {
        int found = Arrays.binarySearch(way, firstOf[number], firstOf[number + 1], along);
        return found >= 0 ? found : Math.max(firstOf[number], -found - 2);
    }

    /** Calls with every stretch whose bucket lies within the border around stretch i; some more than once. */
    public void near(int i, double border, IntConsumer use) {
        buckets.near(i, border, use);
    }
}
