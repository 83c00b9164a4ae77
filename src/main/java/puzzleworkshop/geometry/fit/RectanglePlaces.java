package puzzleworkshop.geometry.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Segments;
import puzzleworkshop.geometry.Turn;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/** Questions about one rectangle on one outline, answered exactly up to {@link Outline#TOLERANCE}. */
public final class RectanglePlaces {

    private RectanglePlaces() {}

    /** Whether it fits at any angle. */
    public static boolean fits(Outline outline, Size size) {
        double w = size.width().mm();
        double h = size.height().mm();
        Segments border = outline.segments();
        return new RectangleFit().place(border, w, h, Directions.of(border, 12)).isPresent();
    }

    public static boolean fitsAt(Outline outline, Size size, double degrees) {
        return new PlaceSearch()
                .any(
                        outline.segments().seenFrom(degrees),
                        size.width().mm(),
                        size.height().mm());
    }

    /** The corners of the set of all places at this angle; empty when it does not fit. */
    public static List<Placement> corners(Outline outline, Size size, double degrees) {
        PlaceSearch search = new PlaceSearch();
        int count = search.corners(
                outline.segments().seenFrom(degrees),
                size.width().mm(),
                size.height().mm());
        return IntStream.range(0, count)
                .mapToObj(i -> fromTurned(search.x(i), search.y(i), degrees))
                .toList();
    }

    /** Whether it lies inside the free area there. */
    public static boolean accepts(Outline outline, Size size, Placement place) {
        Segments seen = outline.segments().seenFrom(place.degrees());
        double[] corner = toTurned(place);
        return free(seen, corner[0], corner[1], size.width().mm(), size.height().mm());
    }

    /**
     * Where a rectangle dropped by hand comes to rest: a corner of the set of places or a border within reach, else
     * just there; empty when it does not fit there and no such corner is near.
     */
    public static Optional<Placement> snapped(Outline outline, Size size, Placement dropped, Length reach) {
        Optional<Placement> corner = corners(outline, size, dropped.degrees()).stream()
                .filter(place -> distance(place, dropped) <= reach.mm())
                .min(Comparator.comparingDouble(place -> distance(place, dropped)));
        if (corner.isPresent() || !accepts(outline, size, dropped)) {
            return corner;
        }
        Segments seen = outline.segments().seenFrom(dropped.degrees());
        double[] at = toTurned(dropped);
        List<Placement> borders = new ArrayList<>();
        for (int[] way : new int[][] {{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
            double far = slide(seen, at, way, size, reach.mm());
            if (far < reach.mm()) {
                borders.add(fromTurned(at[0] + way[0] * far, at[1] + way[1] * far, dropped.degrees()));
            }
        }
        return Optional.of(borders.stream()
                .min(Comparator.comparingDouble(place -> distance(place, dropped)))
                .orElse(dropped));
    }

    private static double slide(Segments seen, double[] at, int[] way, Size size, double reach) {
        double w = size.width().mm();
        double h = size.height().mm();
        if (free(seen, at[0] + way[0] * reach, at[1] + way[1] * reach, w, h)) {
            return reach;
        }
        double low = 0;
        double high = reach;
        while (high - low > Outline.TOLERANCE / 10) {
            double middle = (low + high) / 2;
            if (free(seen, at[0] + way[0] * middle, at[1] + way[1] * middle, w, h)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static boolean free(Segments seen, double x, double y, double w, double h) {
        double tol = Outline.TOLERANCE;
        for (int i = 0; i < seen.count; i++) {
            if (seen.meets(i, x + tol, y + tol, x + w - tol, y + h - tol)) {
                return false;
            }
        }
        return seen.contains(x + w / 2, y + h / 2);
    }

    private static double distance(Placement a, Placement b) {
        return Math.hypot(a.x() - b.x(), a.y() - b.y());
    }

    private static Placement fromTurned(double x, double y, double degrees) {
        double cos = Turn.cos(degrees);
        double sin = Turn.sin(degrees);
        return new Placement(x * cos - y * sin, x * sin + y * cos, degrees);
    }

    private static double[] toTurned(Placement place) {
        double cos = Turn.cos(place.degrees());
        double sin = Turn.sin(place.degrees());
        return new double[] {place.x() * cos + place.y() * sin, place.y() * cos - place.x() * sin};
    }
}
