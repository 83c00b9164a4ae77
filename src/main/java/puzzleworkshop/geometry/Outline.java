package puzzleworkshop.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.UnaryUnionNG;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * The shape of a board in millimetres: an outer ring and the bad areas in it (holes, knots, old cuts, glue, print).
 * Bad areas may overlap each other and stick out over the edge. Immutable.
 *
 * <p>What may be used is the <em>free area</em>: the outer ring less all bad areas, a closed set, so a rectangle may
 * touch its border. It is computed on a grid of 10⁻⁶ mm by snap rounding, hence always valid.
 */
public final class Outline {

    /** By this much a rectangle may overstep the free area and still count as fitting, in mm: far below any kerf. */
    public static final double TOLERANCE = 0.001;

    /** Below this area, in mm², a shape is not a piece of board. */
    public static final double SMALLEST_AREA = 1;

    private static final PrecisionModel GRID = new PrecisionModel(1e6);
    private static final GeometryFactory SHAPES = new GeometryFactory();

    private final List<Point> outer;
    private final List<List<Point>> badAreas;
    private final Geometry free;
    private final Segments segments;

    private Outline(List<Point> outer, List<List<Point>> badAreas, Geometry free) {
        this.outer = List.copyOf(outer);
        this.badAreas = badAreas.stream().map(List::copyOf).toList();
        this.free = free;
        this.segments = Segments.of(free);
    }

    /**
     * An outline drawn by a person; the last corner is joined to the first.
     *
     * @throws ImpossibleOutline with the spot, when a ring crosses or touches itself, has no area, or nothing is free
     */
    public static Outline of(List<Point> outer, List<List<Point>> badAreas) {
        List<Point> ring = withoutRepeats(outer);
        Geometry whole = checked(ring, "geometry.outline");
        List<Geometry> bad = new ArrayList<>();
        List<List<Point>> badRings = new ArrayList<>();
        for (List<Point> area : badAreas) {
            badRings.add(withoutRepeats(area));
            bad.add(checked(badRings.getLast(), "geometry.badarea"));
        }
        Geometry free = freeArea(whole, bad);
        if (free.getArea() < SMALLEST_AREA) {
            throw new ImpossibleOutline(ring.getFirst(), "geometry.outline.nothingfree");
        }
        return new Outline(ring, badRings, free);
    }

    public static Outline of(List<Point> outer) {
        return of(outer, List.of());
    }

    public static Outline rectangle(Size size) {
        double w = size.width().mm();
        double h = size.height().mm();
        return of(List.of(new Point(0, 0), new Point(w, 0), new Point(w, h), new Point(0, h)));
    }

    /**
     * An outline from measured data, whose rings may cross, touch or repeat themselves: they are mended first by the
     * non-zero winding rule where needed. The free area may fall into several parts.
     *
     * @throws ImpossibleOutline when nothing is free
     */
    public static Outline mended(List<Point> outer, List<List<Point>> badAreas) {
        Geometry whole = GeometryFixer.fix(SHAPES.createPolygon(closed(withoutRepeats(outer))));
        List<Geometry> bad = badAreas.stream()
                .map(Outline::withoutRepeats)
                .filter(ring -> ring.size() >= 3)
                .map(ring -> GeometryFixer.fix(SHAPES.createPolygon(closed(ring))))
                .toList();
        Geometry free = freeArea(whole, bad);
        if (free.getArea() < SMALLEST_AREA) {
            throw new ImpossibleOutline(null, "geometry.outline.nothingfree");
        }
        return new Outline(outer, badAreas, free);
    }

    /** A part of another outline, as left after a cut: its outer ring, its holes as bad areas. */
    public static Outline ofPart(Polygon part) {
        List<List<Point>> holes = new ArrayList<>();
        for (int i = 0; i < part.getNumInteriorRing(); i++) {
            holes.add(spots(part.getInteriorRingN(i).getCoordinates()));
        }
        return new Outline(spots(part.getExteriorRing().getCoordinates()), holes, part);
    }

    public static Geometry difference(Geometry a, Geometry b) {
        return OverlayNG.overlay(a, b, OverlayNG.DIFFERENCE, GRID);
    }

    public static Geometry union(List<Geometry> shapes) {
        return UnaryUnionNG.union(shapes, SHAPES, GRID);
    }

    private static Geometry freeArea(Geometry whole, List<Geometry> bad) {
        Geometry snapped = UnaryUnionNG.union(whole, GRID);
        if (bad.isEmpty()) {
            return snapped;
        }
        Geometry allBad = union(bad);
        return difference(snapped, allBad);
    }

    private static Polygon checked(List<Point> ring, String key) {
        if (ring.size() < 3) {
            throw new ImpossibleOutline(ring.isEmpty() ? null : ring.getFirst(), key + ".fewcorners");
        }
        Polygon polygon = SHAPES.createPolygon(closed(ring));
        TopologyValidationError fault = new IsValidOp(polygon).getValidationError();
        if (fault != null) {
            Coordinate at = fault.getCoordinate();
            throw new ImpossibleOutline(new Point(at.x, at.y), key + ".crosses", Length.mm(at.x), Length.mm(at.y));
        }
        if (polygon.getArea() < SMALLEST_AREA) {
            throw new ImpossibleOutline(ring.getFirst(), key + ".noarea");
        }
        return polygon;
    }

    private static List<Point> withoutRepeats(List<Point> ring) {
        List<Point> clean = new ArrayList<>();
        for (Point spot : ring) {
            if (clean.isEmpty() || !clean.getLast().equals(spot)) {
                clean.add(spot);
            }
        }
        while (clean.size() > 1 && clean.getFirst().equals(clean.getLast())) {
            clean.removeLast();
        }
        return clean;
    }

    private static Coordinate[] closed(List<Point> ring) {
        Coordinate[] coordinates = new Coordinate[ring.size() < 3 ? 0 : ring.size() + 1];
        for (int i = 0; i < coordinates.length; i++) {
            Point spot = ring.get(i % ring.size());
            coordinates[i] = new Coordinate(spot.xMm(), spot.yMm());
        }
        return coordinates;
    }

    private static List<Point> spots(Coordinate[] closedRing) {
        List<Point> ring = new ArrayList<>();
        for (int i = 0; i < closedRing.length - 1; i++) {
            ring.add(new Point(closedRing[i].x, closedRing[i].y));
        }
        return ring;
    }

    public List<Point> outer() {
        return outer;
    }

    public List<List<Point>> badAreas() {
        return badAreas;
    }

    /** What may be used, as JTS shape: a polygon, or several when bad areas cut the board through. A copy. */
    public Geometry free() {
        return free.copy();
    }

    public Geometry freeShape() {
        return free;
    }

    public Segments segments() {
        return segments;
    }

    /** Of the free area, bad areas not counted. */
    public Area area() {
        return Area.mm2(free.getArea());
    }

    /** The smallest upright rectangle around the outer ring. */
    public Size bounds() {
        Envelope box = box();
        return Size.mm(box.getWidth(), box.getHeight());
    }

    /** The corner of {@link #bounds()} with the least x and y. */
    public Point origin() {
        Envelope box = box();
        return new Point(box.getMinX(), box.getMinY());
    }

    private Envelope box() {
        Envelope box = new Envelope();
        outer.forEach(spot -> box.expandToInclude(spot.xMm(), spot.yMm()));
        return box;
    }

    /** The same shape moved so that its bounds start at (0, 0). */
    public Outline atOrigin() {
        Point origin = origin();
        return origin.xMm() == 0 && origin.yMm() == 0 ? this : movedBy(-origin.xMm(), -origin.yMm());
    }

    private Outline movedBy(double dx, double dy) {
        List<List<Point>> bad =
                badAreas.stream().map(ring -> moved(ring, dx, dy)).toList();
        return mended(moved(outer, dx, dy), bad);
    }

    private static List<Point> moved(List<Point> ring, double dx, double dy) {
        return ring.stream()
                .map(spot -> new Point(spot.xMm() + dx, spot.yMm() + dy))
                .toList();
    }

    /**
     * What surely belongs to it when its edge is only known to a distance: the outer ring moved inwards, bad areas outwards, both by
     * so many mm. Of a shape that falls apart the largest part stays.
     *
     * @throws ImpossibleOutline when nothing is left
     */
    public Outline shrunkBy(double mm) {
        if (mm <= 0) {
            return this;
        }
        Geometry less = BufferOp.bufferOp(
                free, -mm, new BufferParameters(8, BufferParameters.CAP_ROUND, BufferParameters.JOIN_MITRE, 5));
        Polygon largest = null;
        for (int i = 0; i < less.getNumGeometries(); i++) {
            if (less.getGeometryN(i) instanceof Polygon part
                    && (largest == null || part.getArea() > largest.getArea())) {
                largest = part;
            }
        }
        if (largest == null || largest.getArea() < SMALLEST_AREA) {
            throw new ImpossibleOutline(null, "geometry.outline.nothingfree");
        }
        return mended(spots(largest.getExteriorRing().getCoordinates()), ofPart(largest).badAreas);
    }

    /** Whether the outer ring is an upright rectangle without bad areas. */
    public boolean isPlainRectangle() {
        return badAreas.isEmpty() && outer.size() == 4 && Math.abs(box().getArea() - free.getArea()) < 1e-6;
    }

    /** Whether it goes into a rectangle of this size upright or turned by 90°. */
    public boolean isWithin(Size limit) {
        return bounds().fitsUpright(limit);
    }

    /**
     * Refuses a shape that {@link #isWithin} denies.
     *
     * @param key of the sentence, which is told the size around this shape and the limit
     * @throws ImpossibleOutline with the corner that lies farthest outside
     */
    public void requireWithin(Size limit, String key) {
        if (isWithin(limit)) {
            return;
        }
        Size box = bounds();
        boolean upright =
                box.width().compareTo(box.height()) >= 0 == limit.width().compareTo(limit.height()) >= 0;
        double right = origin().xMm() + (upright ? limit.width() : limit.height()).mm();
        double below = origin().yMm() + (upright ? limit.height() : limit.width()).mm();
        Point farthest = outer.stream()
                .max(Comparator.comparingDouble(spot -> Math.max(spot.xMm() - right, spot.yMm() - below)))
                .orElseThrow();
        throw new ImpossibleOutline(farthest, key, box, limit);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Outline that && outer.equals(that.outer) && badAreas.equals(that.badAreas);
    }

    @Override
    public int hashCode() {
        return Objects.hash(outer, badAreas);
    }

    @Override
    public String toString() {
        return OutlineText.write(this);
    }
}
