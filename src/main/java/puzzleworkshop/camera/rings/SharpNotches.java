package puzzleworkshop.camera.rings;

import java.util.Arrays;
import java.util.function.DoubleBinaryOperator;

/**
 * Narrow notches followed to their ends. Where two sides come together at a sharp angle into the board, blur fills the end, and a
 * wall that faces the camera hides it; so the sides, straight or round, are followed on to where they meet. Rather too deep than not
 * deep enough: what is cut away there holds no blank.
 */
public final class SharpNotches {

    /** Points beside the end that blur has rounded. */
    private static final int ROUNDED = 3;

    /** Cosine of the notch's angle, 75°; wider ones are found as they are. */
    private static final double WIDEST = 0.26;

    /** The same, 100°, where a wall fills more than this, mm: of a right inner corner as well. */
    private static final double WIDEST_FILLED = -0.17;

    private static final double FILLED_MM = 1;

    /** How far the end may be from the ring, mm: at least, at most, and for each mm of a wall. */
    private static final double LEAST_MM = 0.3;

    private static final double MOST_MM = 4;

    private static final double MOST_BY_WALL = 1.5;

    /** What remains between the end and another edge, mm. */
    private static final double LEFT_MM = 1.5;

    private static final int NEIGHBOURS = 15;

    private final double[] ring;
    private final int size;
    private final DoubleBinaryOperator wall;

    private SharpNotches(double[] ring, DoubleBinaryOperator wall) {
        this.ring = ring;
        this.wall = wall;
        size = Ring.size(ring);
    }

    /**
     * @param path along the sides, from the last point before the end that is as seen to the first after it, as x, y in turn
     * @param rounded points to both sides that are not as seen
     * @param far of the end from the ring as seen, mm
     */
    private record Notch(double[] path, int rounded, double far) {}

    /**
     * @param ring with the board to its right, points {@link Ring#SPACING} apart
     * @param wallMm how long a piece of the sheet a wall hides at a place, mm: so wide a notch may be filled
     * @return the same way round, as far apart
     */
    public static double[] followed(double[] ring, DoubleBinaryOperator wallMm) {
        return Ring.size(ring) < 2 * NEIGHBOURS + 4 ? ring : new SharpNotches(ring, wallMm).followed();
    }

    private double[] followed() {
        Notch[] notches = new Notch[size];
        for (int i = 0; i < size; i++) {
            notches[i] = notch(i);
        }
        boolean[] left = new boolean[size];
        Notch[] taken = new Notch[size];
        boolean some = false;
        for (int i = 0; i < size; i++) {
            if (isDeepest(notches, i)) {
                some = true;
                taken[i] = notches[i];
                for (int d = -notches[i].rounded + 1; d < notches[i].rounded; d++) {
                    left[Math.floorMod(i + d, size)] = true;
                }
            }
        }
        return some ? Ring.spaced(joined(taken, left), Ring.SPACING) : ring;
    }

    private double[] joined(Notch[] taken, boolean[] left) {
        double[] out = new double[64];
        int count = 0;
        for (int i = 0; i < size; i++) {
            double[] more = taken[i] != null
                    ? taken[i].path
                    : left[i] ? new double[0] : new double[] {ring[2 * i], ring[2 * i + 1]};
            while (count + more.length > out.length) {
                out = Arrays.copyOf(out, 2 * out.length);
            }
            System.arraycopy(more, 0, out, count, more.length);
            count += more.length;
        }
        return Arrays.copyOf(out, count);
    }

    /** Of the points around the end of a notch the one nearest to where its sides meet. */
    private boolean isDeepest(Notch[] notches, int i) {
        if (notches[i] == null) {
            return false;
        }
        int around = 2 * notches[i].rounded;
        for (int d = -around; d <= around; d++) {
            int j = Math.floorMod(i + d, size);
            if (notches[j] != null && (notches[j].far < notches[i].far || notches[j].far == notches[i].far && j < i)) {
                return false;
            }
        }
        return true;
    }

    /** The notch whose sides lie before and after a point and meet farther in than it, or null. */
    private Notch notch(int i) {
        double hidden = wall.applyAsDouble(ring[2 * i], ring[2 * i + 1]);
        int most = ROUNDED + (int) Math.ceil(hidden / 2 / Ring.SPACING);
        Notch notch = null;
        for (int rounded = ROUNDED; rounded <= most && notch == null; rounded++) {
            notch = notch(i, rounded, hidden);
        }
        return notch;
    }

    private Notch notch(int i, int rounded, double hidden) {
        double most = Math.max(MOST_MM, MOST_BY_WALL * hidden);
        double widest = hidden > FILLED_MM ? WIDEST_FILLED : WIDEST;
        double length = most + (rounded + 1) * Ring.SPACING;
        double[] in = EdgeEnd.of(ring, i - rounded, -1, length);
        double[] out = in == null ? null : EdgeEnd.of(ring, i + rounded, 1, length);
        int[] meet = out == null ? null : EdgeEnd.meet(in, out);
        if (meet == null || !isSharp(in, meet[0], out, meet[1], widest)) {
            return null;
        }
        double[] end = {in[2 * meet[0]], in[2 * meet[0] + 1]};
        double far = Math.hypot(end[0] - ring[2 * i], end[1] - ring[2 * i + 1]);
        return far > LEAST_MM && far < most && isFree(i, Math.max(NEIGHBOURS, 2 * rounded), end)
                ? new Notch(path(in, meet[0], out, meet[1]), rounded, far)
                : null;
    }

    /** Whether the sides come together from both sides of a narrow gap in the board, which lies to the right of the first. */
    private static boolean isSharp(double[] in, int a, double[] out, int b, double widest) {
        double ax = in[2 * a] - in[2 * a - 2];
        double ay = in[2 * a + 1] - in[2 * a - 1];
        double bx = out[2 * b - 2] - out[2 * b];
        double by = out[2 * b - 1] - out[2 * b + 1];
        double sizes = Math.hypot(ax, ay) * Math.hypot(bx, by);
        return ax * by - ay * bx < 0 && ax * bx + ay * by < -widest * sizes;
    }

    private static double[] path(double[] in, int a, double[] out, int b) {
        double[] path = Arrays.copyOf(in, 2 * (a + b + 1));
        for (int k = 0; k < b; k++) {
            path[2 * (a + 1 + k)] = out[2 * (b - 1 - k)];
            path[2 * (a + 1 + k) + 1] = out[2 * (b - 1 - k) + 1];
        }
        return path;
    }

    private boolean isFree(int i, int beside, double[] end) {
        for (int d = beside; d <= size - beside; d++) {
            int j = Math.floorMod(i + d, size);
            if (Math.hypot(ring[2 * j] - end[0], ring[2 * j + 1] - end[1]) < LEFT_MM) {
                return false;
            }
        }
        return true;
    }
}
