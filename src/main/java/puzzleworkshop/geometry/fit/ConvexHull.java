package puzzleworkshop.geometry.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.geometry.Spot;

/** Corners of the convex hull of spots by Andrew's monotone chain (Inf. Process. Lett. 9, 1979). */
public final class ConvexHull {

    private ConvexHull() {}

    /**
     * One or two spots are their own hull. No tolerance here: spots that differ by rounding alone in x would else make the
     * chain drop a true corner.
     */
    public static List<Spot> of(List<Spot> spots) {
        List<Spot> sorted = spots.stream()
                .sorted(Comparator.comparingDouble(Spot::x).thenComparingDouble(Spot::y))
                .toList();
        if (sorted.size() < 3) {
            return sorted;
        }
        List<Spot> hull = new ArrayList<>(half(sorted));
        hull.addAll(half(sorted.reversed()));
        return hull.isEmpty() ? List.of(sorted.getFirst()) : hull;
    }

    private static List<Spot> half(List<Spot> sorted) {
        List<Spot> chain = new ArrayList<>();
        for (Spot spot : sorted) {
            while (chain.size() > 1 && turn(chain.get(chain.size() - 2), chain.getLast(), spot) <= 0) {
                chain.removeLast();
            }
            chain.add(spot);
        }
        chain.removeLast();
        return chain;
    }

    private static double turn(Spot a, Spot b, Spot c) {
        return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
    }
}
