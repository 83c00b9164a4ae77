package puzzleworkshop.geometry.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Segments;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * What is left of a board after a rectangle was cut from it: the parts it falls into, largest first.
 *
 * @param parts each an outline of its own, in the coordinates of the board it came from
 */
public record Remainder(List<Part> parts) {

    private static final int MOST_RECTANGLES = 4;

    /**
     * One connected part.
     *
     * @param outline its shape
     * @param useful rectangles it gives, largest first, each cut from what the one before leaves; none below the
     *     smallest useful size
     * @param rung of the ladder it stands on, {@link UsefulSizes#SCRAP} when it is of no use
     * @param value by {@link UsefulSizes#value}
     */
    public record Part(Outline outline, List<LargestRectangle> useful, int rung, Area value) {

        public boolean isScrap() {
            return rung == UsefulSizes.SCRAP;
        }
    }

    public Remainder {
        parts = List.copyOf(parts);
    }

    /**
     * @param kerf width of the cut, lost all around the blank
     * @throws IllegalArgumentException when the blank does not lie inside
     */
    public static Remainder after(Outline board, Size blank, Placement place, Length kerf, UsefulSizes sizes) {
        if (!RectanglePlaces.accepts(board, blank, place)) {
            throw new IllegalArgumentException("No such place on this board: " + place);
        }
        Geometry rest = Outline.difference(board.freeShape(), place.polygon(blank, -kerf.mm()));
        return new Remainder(parts(rest).stream()
                .map(polygon -> part(Outline.ofPart(polygon), sizes))
                .toList());
    }

    /** The remainder when nothing is cut: the board itself, with its useful rectangles. */
    public static Remainder whole(Outline board, UsefulSizes sizes) {
        return new Remainder(parts(board.freeShape()).stream()
                .map(polygon -> part(Outline.ofPart(polygon), sizes))
                .toList());
    }

    /** Sum over the parts. */
    public Area value() {
        return parts.stream().map(Part::value).reduce(Area.ZERO, Area::plus);
    }

    /** The largest rectangle of all parts; empty when all is scrap. */
    public Optional<LargestRectangle> largest() {
        return parts.stream()
                .flatMap(part -> part.useful().stream())
                .max(Comparator.comparing(rectangle -> rectangle.size().area()));
    }

    /** Refuses shapes that do not lie side by side in what is left (up to 1 mm² in all). */
    public void requireHolds(List<Outline> kept, Supplier<? extends RuntimeException> refusal) {
        List<Geometry> rest =
                parts.stream().map(part -> part.outline().freeShape()).toList();
        List<Geometry> shapes = kept.stream().map(Outline::freeShape).toList();
        double sum = shapes.stream().mapToDouble(Geometry::getArea).sum();
        if (kept.isEmpty()) {
            return;
        }
        Geometry all = Outline.union(shapes);
        boolean overlapping = sum - all.getArea() > Outline.SMALLEST_AREA;
        if (overlapping
                || rest.isEmpty()
                || Outline.difference(all, Outline.union(rest)).getArea() > Outline.SMALLEST_AREA) {
            throw refusal.get();
        }
    }

    private static List<Polygon> parts(Geometry rest) {
        List<Polygon> parts = new ArrayList<>();
        for (int i = 0; i < rest.getNumGeometries(); i++) {
            if (rest.getGeometryN(i) instanceof Polygon polygon && polygon.getArea() >= Outline.SMALLEST_AREA) {
                parts.add(polygon);
            }
        }
        parts.sort(Comparator.comparingDouble(Polygon::getArea).reversed());
        return parts;
    }

    private static Part part(Outline outline, UsefulSizes sizes) {
        Profile profile = Profile.passing(outline, sizes);
        List<LargestRectangle> useful = profile.rung() == UsefulSizes.SCRAP ? List.of() : useful(outline, sizes);
        return new Part(outline, useful, profile.rung(), profile.value());
    }

    private static List<LargestRectangle> useful(Outline outline, UsefulSizes sizes) {
        List<LargestRectangle> found = new ArrayList<>();
        Segments border = outline.segments();
        double[] angles = Directions.of(border, 4);
        while (found.size() < MOST_RECTANGLES) {
            Segments left = border;
            Optional<LargestRectangle> next = LargestRectangle.in(border, angles)
                    .filter(rectangle -> sizes.rung(0).fitsUpright(rectangle.size()))
                    .or(() -> LargestRectangle.around(left, angles, sizes.rungs()));
            if (next.isEmpty()) {
                break;
            }
            found.add(next.get());
            border = next.get().out(border);
        }
        return found;
    }
}
