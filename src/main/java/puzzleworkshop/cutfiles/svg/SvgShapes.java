package puzzleworkshop.cutfiles.svg;

import java.awt.geom.Path2D;
import puzzleworkshop.cutfiles.found.Curves;
import puzzleworkshop.cutfiles.svg.values.CssText;
import puzzleworkshop.cutfiles.svg.values.Scanner;
import puzzleworkshop.cutfiles.svg.values.SvgPathData;
import puzzleworkshop.cutfiles.svg.values.SvgUnits;
import puzzleworkshop.cutfiles.svg.values.SvgViewport;
import puzzleworkshop.cutfiles.svg.values.Unreadable;
import puzzleworkshop.measure.WorkLimit;

/** The shapes of SVG (SVG 2, chapters 9 and 10) as outlines in user units. */
final class SvgShapes {

    /**
     * @param outline what could be read
     * @param whole false when part of it is damaged
     */
    record Drawn(Path2D outline, boolean whole) {}

    private final SvgUnits units;
    private final WorkLimit limit;

    SvgShapes(SvgUnits units, WorkLimit limit) {
        this.units = units;
        this.limit = limit;
    }

    static boolean isShape(String name) {
        return switch (name) {
            case "path", "rect", "circle", "ellipse", "line", "polyline", "polygon" -> true;
            default -> false;
        };
    }

    /** @throws Unreadable for a length that cannot be read */
    Drawn of(SvgNode node, SvgStyle style, SvgViewport around) {
        return switch (node.name) {
            case "path" -> path(node, style);
            case "rect" -> rectangle(style, around);
            case "circle" -> {
                double r = length(style, "r", around.diagonal(), 0);
                yield oval(style, around, r, r);
            }
            case "ellipse" -> {
                double rx = length(style, "rx", around.innerWidth(), -1);
                double ry = length(style, "ry", around.innerHeight(), -1);
                yield oval(style, around, rx < 0 ? ry : rx, ry < 0 ? rx : ry);
            }
            case "line" -> {
                Path2D.Double path = new Path2D.Double();
                path.moveTo(
                        plain(node, "x1", around.innerWidth(), style), plain(node, "y1", around.innerHeight(), style));
                path.lineTo(
                        plain(node, "x2", around.innerWidth(), style), plain(node, "y2", around.innerHeight(), style));
                yield new Drawn(path, true);
            }
            default -> polyline(node, node.name.equals("polygon"));
        };
    }

    private Drawn path(SvgNode node, SvgStyle style) {
        String data = style.get("d", node.attribute("d")).strip();
        if (data.startsWith("path(")) {
            int end = CssText.closing(data, 5, ')');
            data = CssText.unquoted(data.substring(5, end).strip());
        } else if (data.equals("none")) {
            data = "";
        }
        SvgPathData.Read read = SvgPathData.read(data, limit);
        return new Drawn(read.path(), read.whole());
    }

    private double plain(SvgNode node, String attribute, double whole, SvgStyle style) {
        String text = node.attribute(attribute);
        return text.isBlank() ? 0 : units.px(text, whole, style.fontPx());
    }

    double length(SvgStyle style, String property, double whole, double otherwise) {
        String text = style.get(property, "auto");
        return text.equals("auto") || text.isBlank() ? otherwise : units.px(text, whole, style.fontPx());
    }

    private Drawn rectangle(SvgStyle style, SvgViewport around) {
        double x = length(style, "x", around.innerWidth(), 0);
        double y = length(style, "y", around.innerHeight(), 0);
        double width = length(style, "width", around.innerWidth(), 0);
        double height = length(style, "height", around.innerHeight(), 0);
        double rx = length(style, "rx", around.innerWidth(), -1);
        double ry = length(style, "ry", around.innerHeight(), -1);
        Path2D.Double path = new Path2D.Double();
        if (width <= 0 || height <= 0) {
            return new Drawn(path, true);
        }
        // one radius alone counts for both, and none is more than half a side
        double across = Math.min(Math.max(0, rx < 0 ? ry : rx), width / 2);
        double down = Math.min(Math.max(0, ry < 0 ? rx : ry), height / 2);
        if (across > 0 && down > 0) {
            double quarter = Math.PI / 2;
            path.moveTo(x + across, y);
            path.lineTo(x + width - across, y);
            Curves.arc(path, x + width - across, y + down, across, down, 0, -quarter, quarter);
            path.lineTo(x + width, y + height - down);
            Curves.arc(path, x + width - across, y + height - down, across, down, 0, 0, quarter);
            path.lineTo(x + across, y + height);
            Curves.arc(path, x + across, y + height - down, across, down, 0, quarter, quarter);
            path.lineTo(x, y + down);
            Curves.arc(path, x + across, y + down, across, down, 0, 2 * quarter, quarter);
        } else {
            path.moveTo(x, y);
            path.lineTo(x + width, y);
            path.lineTo(x + width, y + height);
            path.lineTo(x, y + height);
        }
        path.closePath();
        return new Drawn(path, true);
    }

    private Drawn oval(SvgStyle style, SvgViewport around, double rx, double ry) {
        double x = length(style, "cx", around.innerWidth(), 0);
        double y = length(style, "cy", around.innerHeight(), 0);
        return new Drawn(
                rx > 0 && ry > 0 ? new Path2D.Double(Curves.ellipse(x, y, rx, ry)) : new Path2D.Double(), true);
    }

    private Drawn polyline(SvgNode node, boolean closed) {
        Path2D.Double path = new Path2D.Double();
        Scanner in = new Scanner(node.attribute("points"));
        boolean whole = true;
        boolean some = false;
        try {
            in.skipBlanks();
            while (!in.atEnd()) {
                limit.steps(8);
                double x = in.number();
                in.skipComma();
                double y = in.number();
                in.skipComma();
                if (some) {
                    path.lineTo(x, y);
                } else {
                    path.moveTo(x, y);
                    some = true;
                }
            }
        } catch (Unreadable damaged) {
            whole = false;
        }
        if (closed && some) {
            path.closePath();
        }
        return new Drawn(path, whole);
    }
}
