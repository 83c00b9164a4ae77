package puzzleworkshop.cutfiles.svg;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.cutfiles.found.FoundLines;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.cutfiles.svg.values.Scanner;
import puzzleworkshop.cutfiles.svg.values.SvgUnits;
import puzzleworkshop.cutfiles.svg.values.SvgViewport;
import puzzleworkshop.cutfiles.svg.values.Unreadable;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Size;

/**
 * Decides of each thing drawn whether it is a cut line: a stroke that shows. Fills are kept aside; where a file has
 * nothing but fills (a silhouette), their outlines are taken, and it is said.
 */
final class SvgPainted {

    private static final double COVERS_THE_PAGE = 0.99;

    private static final String HTML = "http://www.w3.org/1999/xhtml ";
    private static final Set<String> ONLY_WORDS = Set.of(
            "body", "div", "p", "span", "font", "b", "i", "u", "em", "strong", "small", "br", "sub", "sup", "code");

    private final FoundLines found;
    private final SvgTree tree;
    private final SvgStyles styles;
    private final SvgShapes shapes;
    private final List<CurvePath> fills = new ArrayList<>();
    /** Whether what lies in a marker or a pattern is stroked. */
    private final Map<SvgNode, Boolean> stroked = new HashMap<>();

    private int filledShapes;

    SvgPainted(FoundLines found, SvgTree tree, SvgStyles styles, SvgShapes shapes) {
        this.found = found;
        this.tree = tree;
        this.styles = styles;
        this.shapes = shapes;
    }

    void shape(SvgNode node, SvgFrame frame) {
        SvgStyle style = frame.style();
        if (!isVisible(style)) {
            found.count(Remark.Kind.NOTE, "cutfiles.svg.hidden");
            return;
        }
        boolean line = hasStroke(style);
        if (!line && !hasFill(style)) {
            found.count(Remark.Kind.NOTE, "cutfiles.svg.no_colour");
            return;
        }
        SvgShapes.Drawn drawn = shapes.of(node, style, frame.around());
        if (!drawn.whole()) {
            found.count(Remark.Kind.UNSURE, "cutfiles.file.unreadable_parts");
        }
        List<CurvePath> runs = found.runs(drawn.outline(), frame.toMm());
        List<CurvePath> left = frame.clip().of(runs, found.limit());
        if (left != runs && !left.equals(runs)) {
            found.count(Remark.Kind.ASSUMED, "cutfiles.svg.clipped");
        }
        if (left.isEmpty()) {
            return;
        }
        tellHatching(style);
        if (!line) {
            filledShapes++;
            if (found.lines().isEmpty() && fills.size() < FoundLines.MOST_LINES) {
                fills.addAll(left);
            }
        } else if (frame.unsure() != null) {
            found.count(Remark.Kind.UNSURE, frame.unsure());
            found.addUnsure(left);
        } else {
            found.add(left);
        }
        if (line) {
            tellDashes(style);
        }
        tellMarkers(node, style);
    }

    private static boolean isVisible(SvgStyle style) {
        return style.get("visibility", "visible").equals("visible");
    }

    private boolean hasStroke(SvgStyle style) {
        return shows(style, style.get("stroke", "none"), "stroke-opacity") && isWide(style.get("stroke-width", "1"));
    }

    private boolean hasFill(SvgStyle style) {
        return shows(style, style.get("fill", "black"), "fill-opacity");
    }

    private boolean shows(SvgStyle style, String paint, String opacity) {
        return SvgPaint.of(paint, style.get("color", "black"), tree) == SvgPaint.Shows.YES
                && SvgUnits.share(style.get(opacity, "1")) > 0;
    }

    private static boolean isWide(String width) {
        try {
            return new Scanner(width.strip()).number() > 0;
        } catch (Unreadable calculated) {
            return true;
        }
    }

    private void tellDashes(SvgStyle style) {
        if (!style.has("stroke-dasharray")) {
            return;
        }
        Scanner in = new Scanner(style.get("stroke-dasharray", "none"));
        boolean gaps = false;
        try {
            in.skipBlanks();
            while (!in.atEnd()) {
                double length = in.number();
                in.word();
                in.skipComma();
                found.limit().steps(1);
                if (length < 0) {
                    return; // invalid: no dashes
                }
                gaps |= length > 0;
            }
        } catch (Unreadable damaged) {
            return;
        }
        if (gaps) {
            found.count(Remark.Kind.ASSUMED, "cutfiles.file.dashed");
        }
    }

    private void tellHatching(SvgStyle style) {
        String fill = style.get("fill", "black");
        if (fill.startsWith("url(")) {
            SvgNode pattern = tree.referred(SvgPaint.reference(fill));
            if (pattern != null && pattern.name.equals("pattern") && isStroked(pattern)) {
                found.count(Remark.Kind.UNSURE, "cutfiles.svg.hatching");
            }
        }
    }

    private void tellMarkers(SvgNode node, SvgStyle style) {
        if (node.name.equals("rect") || node.name.equals("circle") || node.name.equals("ellipse")) {
            return;
        }
        for (String property : new String[] {"marker-start", "marker-mid", "marker-end"}) {
            String value = style.get(property, "none");
            if (value.startsWith("url(")) {
                SvgNode marker = tree.referred(SvgPaint.reference(value));
                if (marker != null && marker.name.equals("marker") && isStroked(marker)) {
                    found.count(Remark.Kind.UNSURE, "cutfiles.svg.markers");
                }
            }
        }
    }

    private boolean isStroked(SvgNode around) {
        Boolean known = stroked.get(around);
        if (known == null) {
            known = isStroked(around, styles.of(around, SvgStyle.INITIAL), 0);
            stroked.put(around, known);
        }
        return known;
    }

    private boolean isStroked(SvgNode node, SvgStyle style, int depth) {
        found.limit().steps(1);
        if (style.get("display", "inline").equals("none")) {
            return false;
        }
        boolean holds = SvgShapes.isShape(node.name) || node.name.equals("use") || node.name.equals("text");
        if (node.name.equals("use") || holds && style.has("stroke")) {
            return true;
        }
        for (SvgNode child : node.children) {
            if (depth < SvgTree.DEEPEST && isStroked(child, styles.of(child, style), depth + 1)) {
                return true;
            }
        }
        return false;
    }

    /** Letters are no outlines; those that are only filled are no lines either. */
    void text(SvgNode node, SvgFrame frame) {
        int letters = 0;
        boolean line = false;
        boolean fill = false;
        List<SvgNode> open = new ArrayList<>(List.of(node));
        List<SvgStyle> around = new ArrayList<>(List.of(frame.style()));
        while (!open.isEmpty()) {
            found.limit().steps(1);
            SvgNode each = open.removeLast();
            SvgStyle style = around.removeLast();
            if (each.letters > 0 && isVisible(style)) {
                letters += each.letters;
                line |= hasStroke(style);
                fill |= hasFill(style);
            }
            for (SvgNode child : each.children) {
                SvgStyle inner = styles.of(child, style);
                if (!SvgKinds.isNeverDrawn(child)
                        && !inner.get("display", "inline").equals("none")) {
                    open.add(child);
                    around.add(inner);
                }
            }
        }
        if (line) {
            found.count(Remark.Kind.UNSURE, "cutfiles.svg.text_lines");
            found.addUnsure(found.runs(place(node, frame, letters), frame.toMm()));
        } else if (fill) {
            found.count(Remark.Kind.NOTE, "cutfiles.file.text");
        }
    }

    /** What another language draws is not interpreted; but plain paragraphs of words, as labels come, are only words. */
    void foreign(SvgNode node) {
        List<SvgNode> open = new ArrayList<>(node.children);
        boolean words = true;
        while (!open.isEmpty() && words) {
            found.limit().steps(1);
            SvgNode each = open.removeLast();
            words = each.name.startsWith(HTML) && ONLY_WORDS.contains(each.name.substring(HTML.length()));
            open.addAll(each.children);
        }
        found.count(
                words ? Remark.Kind.NOTE : Remark.Kind.UNSURE,
                words ? "cutfiles.file.text" : "cutfiles.file.passed_over",
                words ? new Object[0] : new Object[] {"foreignObject"});
    }

    /** About where a text stands: six tenths of the font's size for each letter, common practice. */
    private static Rectangle2D place(SvgNode node, SvgFrame frame, int letters) {
        double size = frame.style().fontPx();
        return new Rectangle2D.Double(
                first(node.attribute("x")), first(node.attribute("y")) - 0.8 * size, 0.6 * size * letters, size);
    }

    private static double first(String numbers) {
        Scanner in = new Scanner(numbers.strip());
        return in.atNumber() ? in.number() : 0;
    }

    void picture(SvgNode node, SvgFrame frame) {
        if (!isVisible(frame.style())) {
            return;
        }
        String source = node.attribute("href");
        boolean drawing = source.startsWith("data:image/svg") || source.endsWith(".svg");
        found.count(
                drawing ? Remark.Kind.UNSURE : Remark.Kind.NOTE,
                drawing ? "cutfiles.svg.drawing_within" : "cutfiles.svg.picture");
    }

    Rectangle2D boundsOf(SvgNode node, SvgStyle style, SvgViewport around) {
        if (!SvgShapes.isShape(node.name)) {
            throw new Unreadable("bounds of " + node.name);
        }
        return shapes.of(node, style, around).outline().getBounds2D();
    }

    /** When all is read: says what became of fills. A rectangle as large as the page is its ground, not a shape. */
    void settle(Optional<Size> page) {
        if (filledShapes == 0) {
            return;
        }
        if (found.lines().isEmpty() && found.unsure().isEmpty()) {
            List<CurvePath> outlines = fills.stream()
                    .filter(line -> page.isEmpty() || !covers(line.bounds(), page.get()))
                    .toList();
            if (!outlines.isEmpty()) {
                found.remark(Remark.Kind.UNSURE, "cutfiles.svg.only_fills", filledShapes);
                found.add(outlines);
                return;
            }
        }
        found.remark(Remark.Kind.NOTE, "cutfiles.svg.filled", filledShapes);
    }

    private static boolean covers(Bounds bounds, Size page) {
        return bounds.width() >= COVERS_THE_PAGE * page.width().mm()
                && bounds.height() >= COVERS_THE_PAGE * page.height().mm();
    }
}
