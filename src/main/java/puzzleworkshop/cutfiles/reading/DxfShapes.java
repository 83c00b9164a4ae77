package puzzleworkshop.cutfiles.reading;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Lines of DXF as outlines in drawing units, y up (AutoCAD DXF reference, entities). Arcs become cubic curves as the
 * JDK makes them (radial error below 0.03 %); splines see {@link DxfSpline}.
 */
final class DxfShapes {

    private static final int CLOSED = 1;
    private static final int CONTROL_VERTEX = 16;

    private DxfShapes() {}

    /** @param things and at: where the thing stands, because an old polyline's points follow it as things of their own */
    static Shape of(DxfPairs.Thing thing, List<DxfPairs.Thing> things, int at) {
        return switch (thing.kind()) {
            case "LINE" ->
                new Line2D.Double(thing.number(10, 0), thing.number(20, 0), thing.number(11, 0), thing.number(21, 0));
            case "CIRCLE" -> {
                double r = thing.number(40, 0);
                yield new Ellipse2D.Double(thing.number(10, 0) - r, thing.number(20, 0) - r, 2 * r, 2 * r);
            }
            case "ARC" -> arc(thing);
            case "ELLIPSE" -> ellipse(thing);
            case "LWPOLYLINE" -> polyline(lightPoints(thing), (thing.whole(70, 0) & CLOSED) != 0);
            case "POLYLINE" -> polyline(oldPoints(things, at), (thing.whole(70, 0) & CLOSED) != 0);
            case "SPLINE" -> DxfSpline.of(thing);
            default -> throw new IllegalArgumentException(thing.kind());
        };
    }

    private static Shape arc(DxfPairs.Thing thing) {
        double r = thing.number(40, 0);
        double from = thing.number(50, 0);
        double sweep = thing.number(51, 360) - from;
        if (sweep <= 0) {
            sweep += 360; // always counter-clockwise
        }
        // the JDK measures angles for y down, so the sign is turned
        return new Arc2D.Double(
                thing.number(10, 0) - r, thing.number(20, 0) - r, 2 * r, 2 * r, -from, -sweep, Arc2D.OPEN);
    }

    private static Shape ellipse(DxfPairs.Thing thing) {
        double majorX = thing.number(11, 0);
        double majorY = thing.number(21, 0);
        double major = Math.hypot(majorX, majorY);
        double minor = major * thing.number(40, 1) * (thing.number(230, 1) < 0 ? -1 : 1);
        double from = thing.number(41, 0);
        double to = thing.number(42, 2 * Math.PI);
        double sweep = to - from;
        if (sweep <= 0) {
            sweep += 2 * Math.PI;
        }
        boolean whole = sweep > 2 * Math.PI - 1e-6;
        Shape unit = whole
                ? new Ellipse2D.Double(-1, -1, 2, 2)
                : new Arc2D.Double(-1, -1, 2, 2, -Math.toDegrees(from), -Math.toDegrees(sweep), Arc2D.OPEN);
        AffineTransform place = AffineTransform.getTranslateInstance(thing.number(10, 0), thing.number(20, 0));
        place.rotate(Math.atan2(majorY, majorX));
        place.scale(major, minor);
        return place.createTransformedShape(unit);
    }

    private record Vertex(double x, double y, double bulge) {}

    private static List<Vertex> lightPoints(DxfPairs.Thing thing) {
        List<Vertex> points = new ArrayList<>();
        for (DxfPairs.Pair pair : thing.pairs()) {
            int last = points.size() - 1;
            switch (pair.code()) {
                case 10 -> points.add(new Vertex(Double.parseDouble(pair.value()), 0, 0));
                case 20 -> points.set(last, new Vertex(points.get(last).x(), Double.parseDouble(pair.value()), 0));
                case 42 ->
                    points.set(
                            last,
                            new Vertex(points.get(last).x(), points.get(last).y(), Double.parseDouble(pair.value())));
                default -> {
                    // widths and elevations do not matter to a cut
                }
            }
        }
        return points;
    }

    private static List<Vertex> oldPoints(List<DxfPairs.Thing> things, int at) {
        List<Vertex> points = new ArrayList<>();
        for (int i = at + 1; i < things.size() && things.get(i).kind().equals("VERTEX"); i++) {
            DxfPairs.Thing vertex = things.get(i);
            if ((vertex.whole(70, 0) & CONTROL_VERTEX) == 0) {
                points.add(new Vertex(vertex.number(10, 0), vertex.number(20, 0), vertex.number(42, 0)));
            }
        }
        return points;
    }

    /** A bulge is the tangent of a quarter of the arc's angle, positive counter-clockwise. */
    private static Shape polyline(List<Vertex> points, boolean closed) {
        Path2D path = new Path2D.Double();
        int count = points.size();
        if (count < 2) {
            return path;
        }
        path.moveTo(points.getFirst().x(), points.getFirst().y());
        for (int i = 0; i < (closed ? count : count - 1); i++) {
            Vertex a = points.get(i);
            Vertex b = points.get((i + 1) % count);
            if (a.bulge() == 0) {
                path.lineTo(b.x(), b.y());
            } else {
                bulge(path, a, b);
            }
        }
        if (closed) {
            path.closePath();
        }
        return path;
    }

    private static void bulge(Path2D path, Vertex a, Vertex b) {
        double chord = Math.hypot(b.x() - a.x(), b.y() - a.y());
        if (chord == 0) {
            return;
        }
        double angle = 4 * Math.atan(a.bulge());
        int parts = (int) Math.ceil(Math.abs(angle) / (Math.PI / 2));
        double radius = chord / (2 * Math.sin(angle / 2));
        double middleX = (a.x() + b.x()) / 2;
        double middleY = (a.y() + b.y()) / 2;
        // from the chord's middle to the centre, to the left of the way for a positive radius below a half turn
        double off = radius * Math.cos(angle / 2) / chord;
        double cx = middleX - (b.y() - a.y()) * off;
        double cy = middleY + (b.x() - a.x()) * off;
        double step = angle / parts;
        double handle = 4.0 / 3 * Math.tan(step / 4);
        double x = a.x() - cx;
        double y = a.y() - cy;
        for (int k = 0; k < parts; k++) {
            double nextX = x * Math.cos(step) - y * Math.sin(step);
            double nextY = x * Math.sin(step) + y * Math.cos(step);
            boolean last = k == parts - 1;
            path.curveTo(
                    cx + x - handle * y,
                    cy + y + handle * x,
                    cx + nextX + handle * nextY,
                    cy + nextY - handle * nextX,
                    last ? b.x() : cx + nextX,
                    last ? b.y() : cy + nextY);
            x = nextX;
            y = nextY;
        }
    }
}
