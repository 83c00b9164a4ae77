package puzzleworkshop.cutfiles;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import puzzleworkshop.geometry.path.LineSegments;

/**
 * Finds where a line runs along one that came before it in the file (or back along itself), nearer than a tolerance:
 * whole doubles, partial overlaps and near-coincident lines alike. The first of several stays clear, all later ones
 * are reported, so what is reported is what would be burnt a second time.
 *
 * <p>For two stretches that point nearly the same way (or opposite), the part of one that lies within the other's strip
 * is a linear computation. Parts are joined along the line; a run shorter than {@value #SHORTEST_MM} mm is a touch, not a
 * double.
 */
final class DoubledLines {

    /** Lines this close are burnt into one another. */
    static final double TOLERANCE_MM = 0.05;

    private static final double SHORTEST_MM = 0.5;
    private static final double JOINED_MM = 0.12;
    /** Beyond about 20° lines cross rather than run together. */
    private static final double SAME_WAY = 0.34;

    private static final double OVER_THE_END_MM = 0.02;
    private static final double OWN_NEIGHBOUR_MM = 0.3;

    /** A part of a line that is already drawn by an earlier one. */
    record Run(int line, double fromMm, double toMm, int earlier) {
        double lengthMm() {
            return toMm - fromMm;
        }
    }

    private final LineSegments all;
    private final List<Run> runs = new ArrayList<>();
    // parts found on the line that is being looked at
    private int parts;
    private double[] from = new double[256];
    private double[] to = new double[256];
    private int[] earlier = new int[256];

    private DoubledLines(LineSegments all) {
        this.all = all;
    }

    /** Runs in the order of lines, along each line. */
    static List<Run> find(LineSegments all, int lines) {
        DoubledLines doubled = new DoubledLines(all);
        for (int number = 0; number < lines; number++) {
            doubled.lookAlong(number);
        }
        return doubled.runs;
    }

    private void lookAlong(int number) {
        parts = 0;
        for (int i = all.firstOf[number]; i < all.firstOf[number + 1]; i++) {
            int stretch = i;
            all.near(i, TOLERANCE_MM, j -> compare(stretch, j));
        }
        if (parts > 0) {
            join(number);
        }
    }

    private void compare(int i, int j) {
        if (j >= i) {
            return;
        }
        double jx = (all.bx[j] - all.ax[j]) / all.length[j];
        double jy = (all.by[j] - all.ay[j]) / all.length[j];
        double ix = (all.bx[i] - all.ax[i]) / all.length[i];
        double iy = (all.by[i] - all.ay[i]) / all.length[i];
        double across = jx * iy - jy * ix;
        double along = jx * ix + jy * iy;
        if (Math.abs(across) > SAME_WAY) {
            return;
        }
        if (all.line[i] == all.line[j]
                && along > 0
                && (all.way[i] - all.way[j] - all.length[j] < OWN_NEIGHBOUR_MM || isAcrossTheJoint(i, j))) {
            return; // the line simply goes on
        }
        double px = all.ax[i] - all.ax[j];
        double py = all.ay[i] - all.ay[j];
        double low = 0;
        double high = all.length[i];
        // along j between its ends
        double s = px * jx + py * jy;
        double lowest = (-OVER_THE_END_MM - s) / along;
        double highest = (all.length[j] + OVER_THE_END_MM - s) / along;
        low = Math.max(low, Math.min(lowest, highest));
        high = Math.min(high, Math.max(lowest, highest));
        // beside j within the tolerance
        double h = jx * py - jy * px;
        if (Math.abs(across) < 1e-12) {
            if (Math.abs(h) > TOLERANCE_MM) {
                return;
            }
        } else {
            double one = (-TOLERANCE_MM - h) / across;
            double two = (TOLERANCE_MM - h) / across;
            low = Math.max(low, Math.min(one, two));
            high = Math.min(high, Math.max(one, two));
        }
        if (high > low) {
            store(all.way[i] + low, all.way[i] + high, all.line[j]);
        }
    }

    /** Whether j is near the start and i near the end of one line, which may be closed. */
    private boolean isAcrossTheJoint(int i, int j) {
        double whole = all.lengthOf(all.line[i]);
        return whole - all.way[i] - all.length[i] + all.way[j] < OWN_NEIGHBOUR_MM;
    }

    private void store(double low, double high, int line) {
        if (parts == from.length) {
            from = Arrays.copyOf(from, parts * 2);
            to = Arrays.copyOf(to, parts * 2);
            earlier = Arrays.copyOf(earlier, parts * 2);
        }
        from[parts] = low;
        to[parts] = high;
        earlier[parts] = line;
        parts++;
    }

    private void join(int number) {
        Integer[] order = new Integer[parts];
        Arrays.setAll(order, k -> k);
        Arrays.sort(order, (a, b) -> Double.compare(from[a], from[b]));
        double start = from[order[0]];
        double end = to[order[0]];
        int with = earlier[order[0]];
        for (int k = 1; k < parts; k++) {
            int part = order[k];
            if (from[part] > end + JOINED_MM) {
                keep(number, start, end, with);
                start = from[part];
                end = to[part];
                with = earlier[part];
            }
            end = Math.max(end, to[part]);
        }
        keep(number, start, end, with);
    }

    private void keep(int number, double start, double end, int with) {
        double whole = all.lengthOf(number);
        double low = start < JOINED_MM ? 0 : start;
        double high = end > whole - JOINED_MM ? whole : end;
        if (high - low >= Math.min(SHORTEST_MM, whole * 0.9)) {
            runs.add(new Run(number, low, high, with));
        }
    }
}
