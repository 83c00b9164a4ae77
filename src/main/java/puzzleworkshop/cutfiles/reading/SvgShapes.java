package puzzleworkshop.cutfiles.reading;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import org.w3c.dom.Element;

/** The basic shapes of SVG (SVG 2, chapters 9 and 10) as outlines in user units. */
final class SvgShapes {

    private SvgShapes() {}

    static Shape of(Element element, String kind, SvgLengths lengths) {
        return switch (kind) {
            case "path" -> SvgPath.of(element.getAttribute("d"));
            case "rect" -> rectangle(element, lengths);
            case "circle" -> {
                double r = lengths.px(element, "r", 0);
                yield oval(element, lengths, r, r);
            }
            case "ellipse" -> oval(element, lengths, lengths.px(element, "rx", 0), lengths.px(element, "ry", 0));
            case "line" ->
                new Line2D.Double(
                        lengths.px(element, "x1", 0),
                        lengths.px(element, "y1", 0),
                        lengths.px(element, "x2", 0),
                        lengths.px(element, "y2", 0));
            default -> polyline(element, kind.equals("polygon"));
        };
    }

    private static Shape rectangle(Element element, SvgLengths lengths) {
        double x = lengths.px(element, "x", 0);
        double y = lengths.px(element, "y", 0);
        double width = lengths.px(element, "width", 0);
        double height = lengths.px(element, "height", 0);
        double rx = lengths.px(element, "rx", -1);
        double ry = lengths.px(element, "ry", -1);
        // one radius alone counts for both, and none is more than half a side
        double across = Math.min(Math.max(0, rx < 0 ? ry : rx), width / 2);
        double down = Math.min(Math.max(0, ry < 0 ? rx : ry), height / 2);
        if (width <= 0 || height <= 0) {
            return new Path2D.Double();
        }
        return across > 0 && down > 0
                ? new RoundRectangle2D.Double(x, y, width, height, 2 * across, 2 * down)
                : new Rectangle2D.Double(x, y, width, height);
    }

    private static Shape oval(Element element, SvgLengths lengths, double rx, double ry) {
        double x = lengths.px(element, "cx", 0);
        double y = lengths.px(element, "cy", 0);
        return rx > 0 && ry > 0 ? new Ellipse2D.Double(x - rx, y - ry, 2 * rx, 2 * ry) : new Path2D.Double();
    }

    private static Shape polyline(Element element, boolean closed) {
        String text = element.getAttribute("points").strip();
        Path2D path = new Path2D.Double();
        if (text.isEmpty()) {
            return path;
        }
        String[] numbers = text.split("[\\s,]+");
        for (int i = 0; i + 1 < numbers.length; i += 2) {
            double x = Double.parseDouble(numbers[i]);
            double y = Double.parseDouble(numbers[i + 1]);
            if (i == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        if (closed) {
            path.closePath();
        }
        return path;
    }
}
