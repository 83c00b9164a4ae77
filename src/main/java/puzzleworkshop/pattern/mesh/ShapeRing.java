package puzzleworkshop.pattern.mesh;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.edges.SplitMix;
import puzzleworkshop.pattern.shapes.BentLine;

/**
 * A personal shape inside a pattern: its outline clockwise, places where lines may end on it, and those taken. Of a divided
 * one lines end on the outline from both sides; whatever lies within counts as free.
 */
final class ShapeRing {

    private static final double FLATTENING_MM = 0.05;
    private static final int BENDS = 4;
    private static final GeometryFactory JTS = new GeometryFactory();

    /** A place on the outline: which segment, where on it, and the direction into the shape, or out of it for a line from within. */
    record Place(int segment, double t, Point point, double inX, double inY) {

        Place outwards() {
            return new Place(segment, t, point, -inX, -inY);
        }
    }

    final String name;
    final CurvePath outline;
    final Polygon polygon;
    /** What lines stay out of: the shape, or the outline alone of one that is divided. */
    private final Geometry taboo;

    private final PreparedGeometry prepared;
    final boolean divided;
    /** 1 where lines come from outside and end on it, -1 for an outer edge, where they come from inside. */
    private final int inwards;

    private final List<Place> taken = new ArrayList<>();
    private final List<LineString> ways = new ArrayList<>();

    ShapeRing(PersonalShape shape) {
        this(shape.name(), shape.outline(), shape.divided(), Optional.empty());
    }

    /** The outer edge of a puzzle: all beyond it counts as the shape, so that lines end on it from inside. */
    static ShapeRing around(CurvePath edge, Size finished) {
        return new ShapeRing("", edge, false, Optional.of(finished));
    }

    private ShapeRing(String name, CurvePath path, boolean divided, Optional<Size> around) {
        this.name = name;
        this.divided = divided;
        inwards = around.isPresent() ? -1 : 1;
        outline = path.signedAreaMm2() > 0 ? path : path.reversed();
        Coordinate[] ring = outline.flattened(FLATTENING_MM).stream()
                .map(ShapeRing::coordinate)
                .toArray(Coordinate[]::new);
        if (ring.length < 4) {
            throw new Refused("pattern.shape.crosses", name);
        }
        polygon = around.map(size -> beyond(ring, size)).orElseGet(() -> JTS.createPolygon(ring));
        if (!polygon.isValid()) {
            throw new Refused("pattern.shape.crosses", name);
        }
        taboo = divided ? polygon.getExteriorRing() : polygon;
        prepared = PreparedGeometryFactory.prepare(taboo);
    }

    private static Polygon beyond(Coordinate[] ring, Size finished) {
        Envelope all =
                new Envelope(0, finished.width().mm(), 0, finished.height().mm());
        all.expandBy(Math.max(all.getWidth(), all.getHeight()));
        Polygon frame = (Polygon) JTS.toGeometry(all);
        return JTS.createPolygon(frame.getExteriorRing(), new LinearRing[] {JTS.createLinearRing(ring)});
    }

    static Coordinate coordinate(Point p) {
        return new Coordinate(p.xMm(), p.yMm());
    }

    double distanceTo(Point p) {
        return taboo.distance(JTS.createPoint(coordinate(p)));
    }

    boolean isCrossedBy(Point a, Point b) {
        return prepared.intersects(JTS.createLineString(new Coordinate[] {coordinate(a), coordinate(b)}));
    }

    List<Place> taken() {
        return taken;
    }

    /**
     * The best place for a line that comes from a point: near, roughly ahead, met squarely, with room to the places
     * already taken. Takes it.
     *
     * @param ahead direction of the line, unit vector
     * @return null where no place will do
     */
    Place take(Point from, double[] ahead, double unitMm, double roomMm) {
        boolean outwards = divided && polygon.contains(JTS.createPoint(coordinate(from)));
        Place best = null;
        double least = Double.POSITIVE_INFINITY;
        for (int s = 0; s < outline.segments().size(); s++) {
            Segment segment = outline.segments().get(s);
            Point start = outline.startOf(s);
            int steps = (int) Math.max(3, Math.ceil(segment.lengthMm(start) / (unitMm / 14)));
            for (int k = 0; k < steps; k++) {
                Place met = place(s, (k + 0.5) / steps);
                Place place = outwards ? met.outwards() : met;
                double cost = cost(place, from, ahead, unitMm, roomMm);
                if (cost < least) {
                    least = cost;
                    best = place;
                }
            }
        }
        if (best != null) {
            taken.add(best);
            ways.add(way(from, best.point()));
        }
        return best;
    }

    private double cost(Place place, Point from, double[] ahead, double unitMm, double roomMm) {
        double distance = from.distanceTo(place.point());
        double dx = (place.point().xMm() - from.xMm()) / distance;
        double dy = (place.point().yMm() - from.yMm()) / distance;
        double squarely = dx * place.inX() + dy * place.inY();
        double onward = dx * ahead[0] + dy * ahead[1];
        if (squarely < 0.6 || onward < 0.3 || distance > 2.2 * unitMm) {
            return Double.POSITIVE_INFINITY;
        }
        double cost = distance + unitMm * (0.8 * (1 - onward) + 0.6 * (1 - squarely));
        if (taken.stream().anyMatch(other -> other.point().distanceTo(place.point()) < roomMm)) {
            return Double.POSITIVE_INFINITY;
        }
        LineString way = way(from, from.towards(place.point(), 1 - 0.1 / distance));
        if (prepared.intersects(way) || ways.stream().anyMatch(other -> other.distance(way) < roomMm / 2)) {
            return Double.POSITIVE_INFINITY;
        }
        return cost;
    }

    private static LineString way(Point from, Point to) {
        return JTS.createLineString(new Coordinate[] {coordinate(from), coordinate(to)});
    }

    private Place place(int segment, double t) {
        Segment on = outline.segments().get(segment);
        Point start = outline.startOf(segment);
        double[] v = on.velocity(start, t);
        double speed = Math.sqrt(v[0] * v[0] + v[1] * v[1]);
        // clockwise on a screen: the inside lies to the right of the way
        return speed == 0
                ? new Place(segment, t, on.at(start, t), 0, 0)
                : new Place(segment, t, on.at(start, t), -inwards * v[1] / speed, inwards * v[0] / speed);
    }

    /** The outline from one place on to another, clockwise. */
    CurvePath between(Place a, Place b) {
        List<Segment> segments = new ArrayList<>();
        int count = outline.segments().size();
        int s = a.segment();
        double from = a.t();
        boolean started = false;
        while (true) {
            boolean last = s == b.segment() && (b.t() > from || started);
            double to = last ? b.t() : 1;
            if (to > from) {
                Segment part = outline.segments().get(s).part(outline.startOf(s), from, to);
                segments.add(last ? endingAt(part, b.point()) : part);
            }
            if (last) {
                return new CurvePath(a.point(), segments, false);
            }
            s = (s + 1) % count;
            from = 0;
            started = true;
        }
    }

    /**
     * The same with bends of a few tenths of a millimetre: along one smooth edge no two stretches could be told apart.
     *
     * @param life how much it bends, 0 to 1
     */
    CurvePath bent(Place a, Place b, SplitMix random, double life) {
        double[] sizes = new double[BENDS];
        for (int i = 0; i < BENDS; i++) {
            sizes[i] = life * random.between(-1, 1) / (1 + 0.25 * i);
        }
        return BentLine.of(between(a, b), sizes);
    }

    private static Segment endingAt(Segment part, Point end) {
        return switch (part) {
            case Segment.Line line -> new Segment.Line(end);
            case Segment.Cubic cubic -> new Segment.Cubic(cubic.control1(), cubic.control2(), end);
        };
    }
}
