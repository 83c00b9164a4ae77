package puzzleworkshop.cutfiles.dxf;

import java.awt.Shape;
import java.awt.geom.Path2D;
import java.util.Arrays;
import java.util.List;
import puzzleworkshop.cutfiles.found.Curves;

/** Lines of DXF as outlines in drawing units, y up (DXF reference, ENTITIES). */
final class DxfCurves {

    static final int CLOSED = 1;
    private static final int CONTROL_VERTEX = 16;
    private static final double WHOLE = 2 * Math.PI;

    private DxfCurves() {}

    static Shape line(DxfThing thing) {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(thing.number(10, 0), thing.number(20, 0));
        path.lineTo(thing.number(11, 0), thing.number(21, 0));
        return path;
    }

    static Shape circle(DxfThing thing) {
        double r = radius(thing);
        return Curves.ellipse(thing.number(10, 0), thing.number(20, 0), r, r);
    }

    private static double radius(DxfThing thing) {
        return Math.abs(thing.number(40, 0));
    }

    static Shape arc(DxfThing thing) {
        double r = radius(thing);
        double from = Math.toRadians(thing.number(50, 0));
        double sweep = (thing.number(51, 360) - thing.number(50, 0)) % 360;
        sweep = sweep <= 0 ? sweep + 360 : sweep; // always counter-clockwise
        double cx = thing.number(10, 0);
        double cy = thing.number(20, 0);
        Path2D.Double path = new Path2D.Double();
        path.moveTo(cx + r * Math.cos(from), cy + r * Math.sin(from));
        Curves.arc(path, cx, cy, r, r, 0, from, Math.toRadians(sweep));
        return path;
    }

    /** In the drawing's own coordinates; its parameters run counter-clockwise seen along its normal. */
    static Shape ellipse(DxfThing thing) {
        double majorX = thing.number(11, 0);
        double majorY = thing.number(21, 0);
        double major = Math.hypot(majorX, majorY);
        double minor = major * thing.number(40, 1) * (thing.number(230, 1) < 0 ? -1 : 1);
        double from = thing.number(41, 0);
        double sweep = thing.number(42, WHOLE) - from;
        sweep = sweep - WHOLE * Math.floor(sweep / WHOLE);
        boolean whole = sweep < 1e-9 || sweep > WHOLE - 1e-6;
        double turn = Math.atan2(majorY, majorX);
        double cx = thing.number(10, 0);
        double cy = thing.number(20, 0);
        Path2D.Double path = new Path2D.Double();
        double x = major * Math.cos(from);
        double y = minor * Math.sin(from);
        path.moveTo(cx + Math.cos(turn) * x - Math.sin(turn) * y, cy + Math.sin(turn) * x + Math.cos(turn) * y);
        Curves.arc(path, cx, cy, major, minor, turn, from, whole ? WHOLE : sweep);
        if (whole) {
            path.closePath();
        }
        return path;
    }

    /** Corners of a polyline in turns: x, y, bulge. */
    static Shape lightPolyline(DxfThing thing) {
        double[] corners = new double[48];
        int count = 0;
        DxfText rows = thing.rows();
        for (int i = thing.first(); i < thing.end(); i++) {
            int code = rows.code(i);
            if (code == 10) {
                if (count + 3 > corners.length) {
                    corners = Arrays.copyOf(corners, count * 2);
                }
                corners[count] = rows.number(i);
                corners[count + 1] = 0;
                corners[count + 2] = 0;
                count += 3;
            } else if (count > 0 && code == 20) {
                corners[count - 2] = rows.number(i);
            } else if (count > 0 && code == 42) {
                corners[count - 1] = rows.number(i);
            }
        }
        return polyline(Arrays.copyOf(corners, count), thing.has(70, CLOSED));
    }

    /** An old polyline's corners follow it as things of their own. */
    static Shape oldPolyline(DxfThing thing, List<DxfThing> things, int at) {
        double[] corners = new double[48];
        int count = 0;
        for (int i = at + 1; i < things.size() && things.get(i).kind().equals("VERTEX"); i++) {
            DxfThing vertex = things.get(i);
            if (!vertex.has(70, CONTROL_VERTEX)) {
                if (count + 3 > corners.length) {
                    corners = Arrays.copyOf(corners, count * 2);
                }
                corners[count] = vertex.number(10, 0);
                corners[count + 1] = vertex.number(20, 0);
                corners[count + 2] = vertex.number(42, 0);
                count += 3;
            }
        }
        return polyline(Arrays.copyOf(corners, count), thing.has(70, CLOSED));
    }

    private static Shape polyline(double[] corners, boolean closed) {
        Path2D.Double path = new Path2D.Double();
        int count = corners.length / 3;
        if (count < 2) {
            return path;
        }
        path.moveTo(corners[0], corners[1]);
        for (int i = 0; i < (closed ? count : count - 1); i++) {
            int b = (i + 1) % count * 3;
            bulge(path, corners[3 * i], corners[3 * i + 1], corners[3 * i + 2], corners[b], corners[b + 1]);
        }
        if (closed) {
            path.closePath();
        }
        return path;
    }

    /** A bulge is the tangent of a quarter of the arc's angle, positive counter-clockwise. */
    private static void bulge(Path2D path, double ax, double ay, double bulge, double bx, double by) {
        double chord = Math.hypot(bx - ax, by - ay);
        if (bulge == 0 || chord == 0) {
            path.lineTo(bx, by);
            return;
        }
        double angle = 4 * Math.atan(bulge);
        double radius = chord / (2 * Math.sin(angle / 2));
        // from the chord's middle to the centre, to the left of the way for a positive radius below a half turn
        double off = radius * Math.cos(angle / 2) / chord;
        double cx = (ax + bx) / 2 - (by - ay) * off;
        double cy = (ay + by) / 2 + (bx - ax) * off;
        double r = Math.abs(radius);
        Curves.arc(path, cx, cy, r, r, 0, Math.atan2(ay - cy, ax - cx), angle);
        path.lineTo(bx, by); // a last digit apart
    }

    /** Outline of a three-dimensional face of three or four corners. */
    static Shape face(DxfThing thing) {
        Path2D.Double path = new Path2D.Double();
        for (int n = 0; n < 4; n++) {
            double x = thing.number(10 + n, thing.number(12, 0));
            double y = thing.number(20 + n, thing.number(22, 0));
            if (n == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        path.closePath();
        return path;
    }
}
