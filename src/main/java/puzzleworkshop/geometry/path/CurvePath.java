package puzzleworkshop.geometry.path;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;

/**
 * A run of straight lines and cubic curves without a gap, in millimetres, y down; what a laser head follows between
 * two moves. Immutable. A closed path always ends where it starts: where the last stretch does not, the constructor
 * adds the closing line, so that a reader never needs a special case.
 *
 * @param start where the run begins
 * @param segments in order; each begins where the one before ends
 * @param closed whether the end is joined to the start (an outline) or merely ends (an inner line)
 */
public record CurvePath(Point start, List<Segment> segments, boolean closed) {

    public CurvePath {
        if (segments.isEmpty()) {
            throw new IllegalArgumentException("A path needs at least one stretch");
        }
        if (closed && !segments.getLast().to().equals(start)) {
            List<Segment> joined = new ArrayList<>(segments);
            joined.add(new Segment.Line(start));
            segments = joined;
        }
        segments = List.copyOf(segments);
    }

    /** Straight lines through the points, at least two. */
    public static CurvePath through(List<Point> points, boolean closed) {
        List<Segment> lines = new ArrayList<>(points.size());
        for (Point point : points.subList(1, points.size())) {
            lines.add(new Segment.Line(point));
        }
        return new CurvePath(points.getFirst(), lines, closed);
    }

    /** What happens along a path, stretch by stretch with the point each begins at. */
    @FunctionalInterface
    public interface Walker {
        void stretch(Point from, Segment segment);
    }

    public void walk(Walker walker) {
        Point from = start;
        for (Segment segment : segments) {
            walker.stretch(from, segment);
            from = segment.to();
        }
    }

    public Point end() {
        return segments.getLast().to();
    }

    /** Where the stretch with this index begins. */
    public Point startOf(int segment) {
        return segment == 0 ? start : segments.get(segment - 1).to();
    }

    /** Total length in millimetres, curves integrated (see {@link Segment#lengthMm}). */
    public double lengthMm() {
        double[] sum = {0};
        walk((from, segment) -> sum[0] += segment.lengthMm(from));
        return sum[0];
    }

    public Point at(int segment, double t) {
        return segments.get(segment).at(startOf(segment), t);
    }

    /** Signed curvature in 1/mm at a parameter of one stretch; see {@link Segment#curvature}. */
    public double curvature(int segment, double t) {
        return segments.get(segment).curvature(startOf(segment), t);
    }

    /**
     * Area inside a closed path, positive when it runs clockwise as seen on the screen. By Green's theorem; the
     * integrals of lines and cubics are exact (a quadrature of order 8 on polynomials of degree 5). Zero for a path
     * that is not closed.
     */
    public double signedAreaMm2() {
        if (!closed) {
            return 0;
        }
        double[] doubled = {0};
        walk((from, segment) -> doubled[0] += CubicMath.sweep(start, from, segment));
        return doubled[0] / 2;
    }

    public CurvePath reversed() {
        List<Segment> back = new ArrayList<>(segments.size());
        for (int i = segments.size() - 1; i >= 0; i--) {
            back.add(segments.get(i).reversed(startOf(i)));
        }
        return new CurvePath(end(), back, closed);
    }

    /**
     * The same closed line, begun elsewhere on it.
     *
     * @param segment index of the stretch that holds the new start
     * @param t where on it, from 0 to below 1
     */
    public CurvePath startingAt(int segment, double t) {
        if (!closed) {
            throw new IllegalArgumentException("An open line begins where it begins");
        }
        Point from = startOf(segment);
        Segment held = segments.get(segment);
        List<Segment> around = new ArrayList<>(segments.size() + 1);
        around.add(t == 0 ? held : held.part(from, t, 1));
        around.addAll(segments.subList(segment + 1, segments.size()));
        around.addAll(segments.subList(0, segment));
        if (t == 0) {
            return new CurvePath(from, around, true);
        }
        Segment last = held.part(from, 0, t);
        around.add(last);
        return new CurvePath(last.to(), around, true); // its end to the last digit, or a closing line would be added
    }

    /**
     * The points of a polyline that stays within the tolerance of the path; the first is the start, the last the end
     * (for a closed path the start again).
     *
     * @param toleranceMm above zero; the largest distance allowed between curve and chord
     */
    public List<Point> flattened(double toleranceMm) {
        if (!(toleranceMm > 0)) {
            throw new IllegalArgumentException("A tolerance must be above zero, not " + toleranceMm);
        }
        List<Point> points = new ArrayList<>();
        points.add(start);
        walk((from, segment) -> {
            if (segment instanceof Segment.Cubic cubic) {
                int steps = CubicMath.steps(from, cubic, toleranceMm);
                for (int i = 1; i < steps; i++) {
                    points.add(cubic.at(from, (double) i / steps));
                }
            }
            points.add(segment.to());
        });
        return points;
    }

    /** Exact bounds: a curve's own extremes, not those of its control points. */
    public Bounds bounds() {
        Bounds[] all = {Bounds.at(start)};
        walk((from, segment) -> all[0] = all[0].and(segment.bounds(from)));
        return all[0];
    }

    public CurvePath translated(double dxMm, double dyMm) {
        return transformed(AffineTransform.getTranslateInstance(dxMm, dyMm));
    }

    /** Turned about a point; a positive angle turns clockwise as seen on the screen (x towards y). */
    public CurvePath rotated(double radians, Point about) {
        double cos = StrictMath.cos(radians);
        double sin = StrictMath.sin(radians);
        double x = about.xMm();
        double y = about.yMm();
        return transformed(new AffineTransform(cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y));
    }

    /** Any move, turn, stretch or mirror; a cubic's control points move with it, so the result is exact. */
    public CurvePath transformed(AffineTransform move) {
        List<Segment> moved = new ArrayList<>(segments.size());
        for (Segment segment : segments) {
            moved.add(
                    switch (segment) {
                        case Segment.Line line -> new Segment.Line(moved(line.to(), move));
                        case Segment.Cubic c ->
                            new Segment.Cubic(
                                    moved(c.control1(), move), moved(c.control2(), move), moved(c.to(), move));
                    });
        }
        return new CurvePath(moved(start, move), moved, closed);
    }

    private static Point moved(Point p, AffineTransform m) {
        return new Point(
                m.getScaleX() * p.xMm() + m.getShearX() * p.yMm() + m.getTranslateX(),
                m.getShearY() * p.xMm() + m.getScaleY() * p.yMm() + m.getTranslateY());
    }

    /** SVG path data in millimetres with three decimals (a thousandth of a millimetre), absolute commands. */
    public String svgPathData() {
        return PathText.of(this);
    }
}
