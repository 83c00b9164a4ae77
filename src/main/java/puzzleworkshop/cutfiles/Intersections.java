package puzzleworkshop.cutfiles;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.LineSegments;
import puzzleworkshop.geometry.path.SegmentDistance;

/**
 * Where lines meet: crossings that are trouble, and ends that meet nothing. A puzzle's rows and columns cross each other
 * once and end on other lines; a closed line (an outline, a shape) is ended on, not passed through, and a line with an
 * end in the open is neither row nor column.
 *
 * @param crossings places where two lines cross for more than the first time, a line crosses itself, or one passes
 *     through a closed line or has an end in the open inside the frame
 * @param looseEnds ends of open lines with no other line within {@value #TOUCHING_MM} mm
 */
record Intersections(List<Point> crossings, List<Point> looseEnds) {

    static final double TOUCHING_MM = 0.1;
    private static final double SAME_PLACE_MM = 1e-6;
    private static final double OWN_END_MM = 0.5;

    /** @param inside the frame without its rim: an end on the rim may belong to a row whose outline is in another file */
    static Intersections find(LineSegments all, List<CurvePath> lines, List<DoubledLines.Run> doubled, Bounds inside) {
        BitSet noRow = new BitSet();
        for (int number = 0; number < lines.size(); number++) {
            if (lines.get(number).closed()) {
                noRow.set(number);
            }
        }
        List<Point> loose = looseEnds(all, lines, inside, noRow);
        return new Intersections(crossings(all, doubled, noRow), loose);
    }

    private static List<Point> crossings(LineSegments all, List<DoubledLines.Run> doubled, BitSet noRow) {
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
                    byPair.computeIfAbsent((long) low << 32 | high, pair -> new ArrayList<>(1))
                            .add(place(all, one, j));
                }
            });
        }
        List<Point> trouble = new ArrayList<>();
        byPair.forEach((pair, places) -> {
            int one = (int) (pair >>> 32);
            int other = (int) (pair & 0xFFFFFFFFL);
            if (one == other) {
                trouble.addAll(places);
                return;
            }
            List<Point> through = passedThrough(places);
            through.removeIf(place -> endsAt(all, one, place) || endsAt(all, other, place));
            if (through.size() > 1 || noRow.get(one) || noRow.get(other)) {
                trouble.addAll(through);
            }
        });
        trouble.sort(java.util.Comparator.comparingDouble(Point::yMm).thenComparingDouble(Point::xMm));
        return trouble;
    }

    /** Where a corner of one line lies on the other, it is passed through or only touched: then it is there twice. */
    private static List<Point> passedThrough(List<Point> places) {
        List<Point> through = new ArrayList<>();
        for (Point place : places) {
            if (!through.removeIf(other -> other.distanceTo(place) < SAME_PLACE_MM)) {
                through.add(place);
            }
        }
        return through;
    }

    /** A line that ends on another may overshoot it by a hair. */
    private static boolean endsAt(LineSegments all, int line, Point place) {
        int first = all.firstOf[line];
        int last = all.firstOf[line + 1] - 1;
        return Math.min(
                        Math.hypot(all.ax[first] - place.xMm(), all.ay[first] - place.yMm()),
                        Math.hypot(all.bx[last] - place.xMm(), all.by[last] - place.yMm()))
                <= TOUCHING_MM;
    }

    private static boolean cross(LineSegments all, int i, int j) {
        return all.line[i] == all.line[j]
                ? SegmentDistance.cross(
                        all.ax[i], all.ay[i], all.bx[i], all.by[i], all.ax[j], all.ay[j], all.bx[j], all.by[j])
                : SegmentDistance.changesSides(
                        all.ax[i], all.ay[i], all.bx[i], all.by[i], all.ax[j], all.ay[j], all.bx[j], all.by[j]);
    }

    private static Point place(LineSegments all, int i, int j) {
        double dx = all.bx[i] - all.ax[i];
        double dy = all.by[i] - all.ay[i];
        double ex = all.bx[j] - all.ax[j];
        double ey = all.by[j] - all.ay[j];
        double t = ((all.ax[j] - all.ax[i]) * ey - (all.ay[j] - all.ay[i]) * ex) / (dx * ey - dy * ex);
        return Point.of(all.ax[i] + t * dx, all.ay[i] + t * dy);
    }

    private static List<Point> looseEnds(LineSegments all, List<CurvePath> lines, Bounds inside, BitSet withOneInside) {
        List<Point> loose = new ArrayList<>();
        for (int number = 0; number < lines.size(); number++) {
            if (lines.get(number).closed() || all.firstOf[number] == all.firstOf[number + 1]) {
                continue;
            }
            int first = all.firstOf[number];
            int last = all.firstOf[number + 1] - 1;
            if (isLoose(all, first, all.ax[first], all.ay[first], 0)) {
                loose.add(lines.get(number).start());
                withOneInside.set(
                        number,
                        withOneInside.get(number)
                                || inside.holds(Bounds.at(lines.get(number).start())));
            }
            if (isLoose(all, last, all.bx[last], all.by[last], all.lengthOf(number))) {
                loose.add(lines.get(number).end());
                withOneInside.set(
                        number,
                        withOneInside.get(number)
                                || inside.holds(Bounds.at(lines.get(number).end())));
            }
        }
        return loose;
    }

    private static boolean isLoose(LineSegments all, int stretch, double x, double y, double along) {
        boolean[] touched = {false};
        all.near(stretch, TOUCHING_MM, j -> {
            if (touched[0]) {
                return;
            }
            // its own line counts where it comes back to the end, not where it leaves it
            boolean own = all.line[j] == all.line[stretch]
                    && Math.min(Math.abs(all.way[j] - along), Math.abs(all.way[j] + all.length[j] - along))
                            < OWN_END_MM;
            if (!own && SegmentDistance.toPoint(all.ax[j], all.ay[j], all.bx[j], all.by[j], x, y) <= TOUCHING_MM) {
                touched[0] = true;
            }
        });
        return !touched[0];
    }
}
