package puzzleworkshop.pattern;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.geometry.CurvePath;
import puzzleworkshop.geometry.Point;

/**
 * Where lines meet: crossings that are trouble, and ends that meet nothing.
 *
 * @param crossings places where two lines cross for more than the first time, or a line crosses itself
 * @param looseEnds ends of open lines with no other line within {@value #TOUCHING_MM} mm
 */
record Meetings(List<Point> crossings, List<Point> looseEnds) {

    static final double TOUCHING_MM = 0.1;
    private static final double OWN_END_MM = 0.5;

    static Meetings find(Stretches all, List<CurvePath> lines, List<DoubledLines.Run> doubled) {
        return new Meetings(crossings(all, doubled), looseEnds(all, lines));
    }

    private static List<Point> crossings(Stretches all, List<DoubledLines.Run> doubled) {
        BitSet burntTwice = new BitSet(all.count);
        for (DoubledLines.Run run : doubled) {
            int last = all.stretchAt(run.line(), run.toMm());
            burntTwice.set(all.stretchAt(run.line(), run.fromMm()), last + 1);
        }
        Map<Long, List<Point>> byPair = new HashMap<>();
        Set<Long> seen = new HashSet<>();
        for (int i = 0; i < all.count; i++) {
            if (burntTwice.get(i)) {
                continue; // along a double, crossings back and forth say nothing new
            }
            int one = i;
            all.near(i, 0, j -> {
                if (j < one && !burntTwice.get(j) && cross(all, one, j) && seen.add((long) one << 32 | j)) {
                    int low = Math.min(all.line[one], all.line[j]);
                    int high = Math.max(all.line[one], all.line[j]);
                    byPair.computeIfAbsent((long) low << 32 | high, pair -> new ArrayList<>(1)).add(place(all, one, j));
                }
            });
        }
        List<Point> trouble = new ArrayList<>();
        byPair.forEach((pair, places) -> {
            boolean itself = pair >>> 32 == (pair & 0xFFFFFFFFL);
            if (itself || places.size() > 1) {
                trouble.addAll(places);
            }
        });
        trouble.sort(java.util.Comparator.comparingDouble(Point::yMm).thenComparingDouble(Point::xMm));
        return trouble;
    }

    private static boolean cross(Stretches all, int i, int j) {
        return StretchDistance.cross(all.ax[i], all.ay[i], all.bx[i], all.by[i], all.ax[j], all.ay[j], all.bx[j], all.by[j]);
    }

    private static Point place(Stretches all, int i, int j) {
        double dx = all.bx[i] - all.ax[i];
        double dy = all.by[i] - all.ay[i];
        double ex = all.bx[j] - all.ax[j];
        double ey = all.by[j] - all.ay[j];
        double t = ((all.ax[j] - all.ax[i]) * ey - (all.ay[j] - all.ay[i]) * ex) / (dx * ey - dy * ex);
        return Point.of(all.ax[i] + t * dx, all.ay[i] + t * dy);
    }

    private static List<Point> looseEnds(Stretches all, List<CurvePath> lines) {
        List<Point> loose = new ArrayList<>();
        for (int number = 0; number < lines.size(); number++) {
            if (lines.get(number).closed() || all.firstOf[number] == all.firstOf[number + 1]) {
                continue;
            }
            int first = all.firstOf[number];
            int last = all.firstOf[number + 1] - 1;
            if (isLoose(all, first, all.ax[first], all.ay[first], 0)) {
                loose.add(lines.get(number).start());
            }
            if (isLoose(all, last, all.bx[last], all.by[last], all.lengthOf(number))) {
                loose.add(lines.get(number).end());
            }
        }
        return loose;
    }

    private static boolean isLoose(Stretches all, int stretch, double x, double y, double along) {
        boolean[] touched = {false};
        all.near(stretch, TOUCHING_MM, j -> {
            if (touched[0]) {
                return;
            }
            // its own line counts where it comes back to the end, not where it leaves it
            boolean own = all.line[j] == all.line[stretch]
                    && Math.min(Math.abs(all.way[j] - along), Math.abs(all.way[j] + all.length[j] - along)) < OWN_END_MM;
            if (!own && StretchDistance.toPoint(all.ax[j], all.ay[j], all.bx[j], all.by[j], x, y) <= TOUCHING_MM) {
                touched[0] = true;
            }
        });
        return !touched[0];
    }
}
