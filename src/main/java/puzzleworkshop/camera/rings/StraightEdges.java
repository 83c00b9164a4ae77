package puzzleworkshop.camera.rings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A measured ring as a polygon: straight stretches become lines through all their points, neighbours meet in a corner, a curve
 * becomes a chain of chords that stays within {@link #CURVE_MM}. Edges whose directions agree, up to quarter turns, within what the
 * photo can tell are set exactly square.
 */
public final class StraightEdges {

    /** A free curve's polygon stays this near to it. */
    public static final double CURVE_MM = 0.15;

    /** How far two lines may meet from the ring, mm, where they hardly turn, and for each part that a corner is sharper than that. */
    private static final double MEET_MM = 0.1;

    private static final double ROUNDED_MM = 2;

    private static final double LONG_MM = 8;

    /** Cosine of what sides turn along a curve, at most. */
    private static final double CURVE = 0.8;

    /** Corners nearer to each other are one, mm. */
    private static final double BLUNT_MM = 0.05;

    /** Points of one line stray from it by this, mm, and by this share of what the photo leaves unsure, up to a bound. */
    private static final double STRAY_MM = 0.26;

    private static final double STRAY_SHARE = 0.85;

    private static final double MOST_STRAY_MM = 0.45;

    private final double[] ring;
    private final double stray;
    public final List<double[]> corners = new ArrayList<>();
    /** Straight edges of at least {@link SquareSides#SQUARED_MM}. */
    public int straight;
    /** Of these, set square to each other. */
    public int squared;
    /** How far the end of one of them lay from square before, at most, mm. */
    public double squaredWithin;

    /** From one point of the ring to another: a line through a point in a direction, or a chord. */
    record Side(int from, int to, double length, double x, double y, double dx, double dy, boolean line) {}

    public StraightEdges(double[] ring, double doubtMm) {
        this.ring = ring;
        // grain along an edge and the top of its wall lead the measured edge to and fro by less than what is stated
        // anyway
        stray = Math.clamp(STRAY_SHARE * doubtMm, STRAY_MM, MOST_STRAY_MM);
        List<Side> sides = sides(corners(CURVE_MM));
        sides = joined(sides);
        SquareSides square = new SquareSides(sides, doubtMm);
        sides = square.sides;
        straight = square.straight;
        squared = square.squared;
        squaredWithin = square.squaredWithin;
        meet(sides);
        if (strays()) {
            corners.clear();
            squared = 0;
            squaredWithin = 0;
            for (int i : corners(CURVE_MM / 2)) {
                corners.add(new double[] {ring[2 * i], ring[2 * i + 1]});
            }
        }
    }

    /** Whether some measured point lies far from the polygon made of it. */
    private boolean strays() {
        double[] polygon = polygon();
        for (int i = 0; i < Ring.size(ring); i++) {
            if (Lines.fromRing(polygon, ring[2 * i], ring[2 * i + 1]) > 1) {
                return true;
            }
        }
        return false;
    }

    public double[] polygon() {
        double[] polygon = new double[2 * corners.size()];
        for (int i = 0; i < corners.size(); i++) {
            polygon[2 * i] = corners.get(i)[0];
            polygon[2 * i + 1] = corners.get(i)[1];
        }
        return polygon;
    }

    /** Points to keep by Douglas and Peucker's method (1973), begun at two points far apart. */
    private int[] corners(double tolerance) {
        int n = Ring.size(ring);
        int a = 0;
        int b = farthest(0);
        a = farthest(b);
        boolean[] keep = new boolean[n];
        keep[a] = true;
        keep[b] = true;
        split(keep, a, b > a ? b : b + n, tolerance);
        split(keep, b, a > b ? a : a + n, tolerance);
        int[] kept = new int[n];
        int count = 0;
        for (int i = 0; i < n; i++) {
            if (keep[i]) {
                kept[count++] = i;
            }
        }
        return Arrays.copyOf(kept, count);
    }

    private int farthest(int from) {
        int best = from;
        double far = -1;
        for (int i = 0; i < Ring.size(ring); i++) {
            double d = Math.hypot(ring[2 * i] - ring[2 * from], ring[2 * i + 1] - ring[2 * from + 1]);
            if (d > far) {
                far = d;
                best = i;
            }
        }
        return best;
    }

    private void split(boolean[] keep, int from, int to, double tolerance) {
        int n = Ring.size(ring);
        double ax = ring[2 * (from % n)];
        double ay = ring[2 * (from % n) + 1];
        double dx = ring[2 * (to % n)] - ax;
        double dy = ring[2 * (to % n) + 1] - ay;
        double length = Math.hypot(dx, dy);
        int worst = -1;
        double far = tolerance;
        for (int i = from + 1; i < to; i++) {
            double px = ring[2 * (i % n)] - ax;
            double py = ring[2 * (i % n) + 1] - ay;
            double d = length > 1e-9 ? Math.abs(px * dy - py * dx) / length : Math.hypot(px, py);
            if (d > far) {
                far = d;
                worst = i;
            }
        }
        if (worst >= 0) {
            keep[worst % n] = true;
            split(keep, from, worst, tolerance);
            split(keep, worst, to, tolerance);
        }
    }

    private List<Side> sides(int[] kept) {
        List<Side> sides = new ArrayList<>();
        for (int i = 0; i < kept.length; i++) {
            sides.add(side(kept[i], kept[(i + 1) % kept.length]));
        }
        return sides;
    }

    /** The line through the points of a stretch, its rounded ends left out; a chord where there are too few. */
    private Side side(int from, int to) {
        int n = Ring.size(ring);
        int count = Math.floorMod(to - from, n);
        double x1 = ring[2 * from];
        double y1 = ring[2 * from + 1];
        double x2 = ring[2 * to];
        double y2 = ring[2 * to + 1];
        double length = Math.hypot(x2 - x1, y2 - y1);
        int skip = Math.min(4, count / 5);
        if (length < LONG_MM || count - 2 * skip < 6) {
            double d = Math.max(1e-9, length);
            return new Side(from, to, length, (x1 + x2) / 2, (y1 + y2) / 2, (x2 - x1) / d, (y2 - y1) / d, false);
        }
        double[] fit = Lines.alongMost(ring, from + skip, count - 2 * skip + 1);
        double sign = fit[2] * (x2 - x1) + fit[3] * (y2 - y1) < 0 ? -1 : 1;
        return new Side(from, to, length, fit[0], fit[1], sign * fit[2], sign * fit[3], true);
    }

    /** Neighbours that are one line become one; short chords between two lines are a corner that blur has rounded. */
    private List<Side> joined(List<Side> sides) {
        List<Side> now = new ArrayList<>(sides);
        while (now.size() > 3 && joinBest(now)) {
            // until no two neighbours are one line
        }
        for (int i = 0; i < now.size() && now.size() > 3; i++) {
            Side a = now.get(i);
            for (int chords = 1; a.line && chords <= 4 && chords + 2 < now.size(); chords++) {
                Side b = now.get((i + chords + 1) % now.size());
                if (b.line && Math.floorMod(b.from - a.to, Ring.size(ring)) * Ring.SPACING < 7) {
                    double[] corner = Lines.meet(a.x, a.y, a.dx, a.dy, b.x, b.y, b.dx, b.dy);
                    if (corner != null && goesBy(a, corner, b)) {
                        Side from = now.get((i + 1) % now.size());
                        for (int k = 0; k < chords; k++) {
                            now.remove(from);
                            from = now.get((now.indexOf(a) + 1) % now.size());
                        }
                        i = now.indexOf(a);
                    }
                    break;
                }
            }
        }
        return now;
    }

    private boolean joinBest(List<Side> now) {
        int best = -1;
        double least = stray;
        Side line = null;
        int n = Ring.size(ring);
        for (int i = 0; i < now.size(); i++) {
            Side a = now.get(i);
            Side b = now.get((i + 1) % now.size());
            if (a.dx * b.dx + a.dy * b.dy < 0.9 && a.length > 2 && b.length > 2) {
                continue;
            }
            Side both = side(a.from, b.to);
            if (!both.line) {
                continue;
            }
            int count = Math.floorMod(both.to - both.from, n);
            int skip = Math.min(1, count / 6);
            double worst = Lines.worst(ring, both.from + skip, count - 2 * skip + 1, both.x, both.y, both.dx, both.dy);
            if (worst < least && !Lines.isBowed(ring, both)) {
                least = worst;
                best = i;
                line = both;
            }
        }
        if (best >= 0) {
            replace(now, best, 2, line);
        }
        return best >= 0;
    }

    /** Whether the ring between two sides follows them to where they meet, but for the rounding of blur. */
    private boolean goesBy(Side a, double[] corner, Side b) {
        int n = Ring.size(ring);
        double sharp = a.dx * b.dx + a.dy * b.dy;
        double allowed = sharp < -0.3 ? 0.8 : 0.65;
        double near = Double.MAX_VALUE;
        for (int i = -3; i <= Math.floorMod(b.from - a.to, n) + 3; i++) {
            int j = Math.floorMod(a.to + i, n);
            double x = ring[2 * j];
            double y = ring[2 * j + 1];
            double fromA = Math.abs((x - a.x) * a.dy - (y - a.y) * a.dx);
            double fromB = Math.abs((x - b.x) * b.dy - (y - b.y) * b.dx);
            if (Math.min(fromA, fromB) > allowed) {
                return false;
            }
            near = Math.min(near, Math.hypot(x - corner[0], y - corner[1]));
        }
        // blur rounds a corner the more the sharper it is; two lines along a curve meet outside of it
        double rounded = MEET_MM + ROUNDED_MM * (1 / Math.sqrt(Math.max(0.01, (1 + sharp) / 2)) - 1);
        return near < (sharp < -0.3 ? 1.6 : 1.1) && Lines.fromRing(ring, corner[0], corner[1]) < rounded;
    }

    private static void replace(List<Side> sides, int at, int count, Side by) {
        List<Side> rest = new ArrayList<>();
        for (int i = 0; i < sides.size() - count; i++) {
            rest.add(sides.get((at + count + i) % sides.size()));
        }
        sides.clear();
        sides.add(by);
        sides.addAll(rest);
    }

    private void meet(List<Side> sides) {
        int n = sides.size();
        for (int i = 0; i < n; i++) {
            Side a = sides.get(i);
            Side b = sides.get((i + 1) % n);
            double x = ring[2 * b.from];
            double y = ring[2 * b.from + 1];
            double[] corner = a.line || b.line ? Lines.meet(a.x, a.y, a.dx, a.dy, b.x, b.y, b.dx, b.dy) : null;
            boolean fits = corner != null
                    && (a.line && b.line
                            ? goesBy(a, corner, b)
                            : Math.hypot(corner[0] - x, corner[1] - y) < 0.6
                                    && Lines.fromRing(ring, corner[0], corner[1]) < MEET_MM);
            if (fits) {
                corners.add(corner);
            } else {
                blunt(a, new double[] {x, y}, b);
            }
        }
    }

    /**
     * A rounded corner of the ring stays one, but turns no line: what is straight ends on its line. Where sides hardly turn they are
     * chords of a curve, and their lines lie outside of it.
     */
    private void blunt(Side a, double[] point, Side b) {
        if (a.dx * b.dx + a.dy * b.dy > CURVE) {
            corners.add(point);
            return;
        }
        double[] end = a.line ? Lines.foot(point, a.x, a.y, a.dx, a.dy) : point;
        double[] start = b.line ? Lines.foot(point, b.x, b.y, b.dx, b.dy) : point;
        corners.add(end);
        if (Math.min(Lines.apart(point, end), Lines.apart(point, start)) > BLUNT_MM) {
            corners.add(point);
        }
        if (start != point && Lines.apart(start, end) > BLUNT_MM) {
            corners.add(start);
        }
    }
}
