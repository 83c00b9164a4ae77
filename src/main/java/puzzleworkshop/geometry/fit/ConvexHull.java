package puzzleworkshop.geometry.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.geometry.Point;

/** Corners of the convex hull of spots by Andrew's monotone chain (Inf. Process. Lett. 9, 1979). */
public final class ConvexHull {

    private ConvexHull() {}

    /**
     * One or two spots are their own hull. No tolerance here: spots that differ by rounding alone in x would else make the
     * chain drop a true corner.
     */
    public static List<Point> of(List<Point> spots) {
        List<Point> sorted = spots.stream()
                .sorted(Comparator.comparingDouble(Point::xMm).thenComparingDouble(Point::yMm))
                .toList();
        if (sorted.size() < 3) {
            return sorted;
        }
        List<Point> hull = new ArrayList<>(half(sorted));
        hull.addAll(half(sorted.reversed()));
        return hull.isEmpty() ? List.of(sorted.getFirst()) : hull;
    }

    private static List<Point> half(List<Point> sorted) {
        List<Point> chain = new ArrayList<>();
        for (Point spot : sorted) {
            while (chain.size() > 1 && turn(chain.get(chain.size() - 2), chain.getLast(), spot) <= 0) {
                chain.removeLast();
            }
            chain.add(spot);
        }
        chain.removeLast();
        return chain;
    }

    private static double turn(Point a, Point b, Point c) {
        return (b.xMm() - a.xMm()) * (c.yMm() - a.yMm()) - (b.yMm() - a.yMm()) * (c.xMm() - a.xMm());
    }
}
