package puzzleworkshop.cutfiles.svg;

import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.io.InputStream;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.cutfiles.found.FoundLines;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.cutfiles.svg.values.SvgTransforms;
import puzzleworkshop.cutfiles.svg.values.SvgUnits;
import puzzleworkshop.cutfiles.svg.values.SvgViewport;
import puzzleworkshop.cutfiles.svg.values.Unreadable;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.WorkLimit;

/**
 * Reads the lines of an SVG file in real millimetres, as SVG 2 with CSS has them drawn. A cut line is stroked geometry
 * that shows: fills without a stroke, hidden and clipped-away things, definitions that nothing uses are none, and what
 * was left out is said. What is not interpreted (masks, filters, markers with lines of their own, stroked text …) is said
 * and, where its place is known, handed over as not sure.
 */
public final class SvgDrawing {

    private static final double OUTSIDE_MM = 0.1;

    private final FoundLines found;
    private final WorkLimit limit;
    private final SvgTree tree;
    private final SvgUnits units;
    private final SvgStyles styles;
    private final SvgClips clips;
    private final SvgPainted painted;
    private final Set<SvgNode> inUse = new HashSet<>();

    private SvgDrawing(FoundLines found, SvgTree tree, SvgUnits units) {
        this.found = found;
        this.limit = found.limit();
        this.tree = tree;
        this.units = units;
        this.styles = new SvgStyles(found, tree, units);
        SvgShapes shapes = new SvgShapes(units, limit);
        this.clips = new SvgClips(tree, styles, shapes, units, limit);
        this.painted = new SvgPainted(found, tree, styles, shapes);
    }

    /**
     * @return the size of the page, if the file has one
     * @throws Refused when it is damaged or no SVG
     */
    public static Optional<Size> read(FoundLines found, InputStream bytes, double pxPerInch) {
        SvgTree tree = SvgTree.read(found, bytes);
        if (tree.root() == null || !tree.root().name.equals("svg")) {
            throw new Refused("cutfiles.file.no_svg", found.name());
        }
        return new SvgDrawing(found, tree, new SvgUnits(pxPerInch)).draw(tree.root());
    }

    private Optional<Size> draw(SvgNode root) {
        SvgStyle style = styles.of(root, SvgStyle.INITIAL);
        units.rootFont(style.fontPx());
        double[] box = SvgViewport.box(root.attribute("viewBox"));
        if (box != null && (box[2] == 0 || box[3] == 0)) {
            found.count(Remark.Kind.NOTE, "cutfiles.svg.hidden");
            return Optional.empty();
        }
        if (box != null && (box[2] < 0 || box[3] < 0)) {
            box = null;
        }
        SvgViewport page = new SvgPage(units, found).of(style, box, root.attribute("preserveAspectRatio"));
        AffineTransform toMm = AffineTransform.getScaleInstance(units.mmPerPx(), units.mmPerPx());
        toMm.concatenate(page.contents());
        if (style.has("transform")) {
            found.remark(Remark.Kind.UNSURE, "cutfiles.svg.page_turned");
        }
        if (shows(style)) {
            SvgFrame frame = new SvgFrame(toMm, style, page, SvgClip.NONE, null);
            children(root, around(root, style, frame), 0);
        }
        Optional<Size> size = page.width() > 0 && page.height() > 0
                ? Optional.of(Size.mm(page.width() * units.mmPerPx(), page.height() * units.mmPerPx()))
                : Optional.empty();
        painted.settle(size);
        size.ifPresent(this::tellOutside);
        return size;
    }

    private void tellOutside(Size page) {
        for (CurvePath line : found.lines()) {
            var b = line.bounds();
            if (b.minX() < -OUTSIDE_MM
                    || b.minY() < -OUTSIDE_MM
                    || b.maxX() > page.width().mm() + OUTSIDE_MM
                    || b.maxY() > page.height().mm() + OUTSIDE_MM) {
                found.count(Remark.Kind.ASSUMED, "cutfiles.svg.outside_page");
            }
        }
    }

    private void children(SvgNode parent, SvgFrame frame, int depth) {
        for (SvgNode child : parent.children) {
            element(child, frame, depth + 1);
        }
    }

    private void element(SvgNode node, SvgFrame outer, int depth) {
        limit.steps(4);
        if (SvgKinds.isNeverDrawn(node)) {
            return;
        }
        if (depth > SvgTree.DEEPEST) {
            found.count(Remark.Kind.UNSURE, "cutfiles.file.passed_over", node.name);
            return;
        }
        if (node.has("systemLanguage")) {
            found.count(Remark.Kind.ASSUMED, "cutfiles.svg.language");
        }
        if (!SvgKinds.isWanted(node)) {
            return;
        }
        SvgStyle style = styles.of(node, outer.style());
        if (!shows(style)) {
            found.count(Remark.Kind.NOTE, "cutfiles.svg.hidden");
            return;
        }
        try {
            SvgFrame frame = around(node, style, moved(node, style, outer));
            switch (node.name) {
                case "g", "a" -> children(node, frame, depth);
                case "switch" -> oneOf(node, frame, depth);
                case "svg" -> inner(node, style, frame, null, depth);
                case "use" -> use(node, style, frame, depth);
                case "text" -> painted.text(node, frame);
                case "image" -> painted.picture(node, frame);
                case "foreignObject" -> painted.foreign(node);
                default -> {
                    if (SvgShapes.isShape(node.name)) {
                        painted.shape(node, frame);
                    } else {
                        found.count(Remark.Kind.UNSURE, "cutfiles.file.passed_over", node.name);
                    }
                }
            }
        } catch (Unreadable damaged) {
            found.count(Remark.Kind.UNSURE, "cutfiles.file.unreadable_parts");
        }
    }

    private static boolean shows(SvgStyle style) {
        return !style.get("display", "inline").equals("none") && SvgUnits.share(style.get("opacity", "1")) > 0;
    }

    private SvgFrame moved(SvgNode node, SvgStyle style, SvgFrame outer) {
        SvgFrame frame = outer.with(style);
        if (!style.has("transform")) {
            return frame;
        }
        SvgViewport around = outer.around();
        String boxName = style.get("transform-box", "view-box");
        Rectangle2D box = switch (boxName) {
            case "fill-box", "content-box" -> painted.boundsOf(node, style, around);
            case "view-box" -> new Rectangle2D.Double(0, 0, around.innerWidth(), around.innerHeight());
            default -> throw new Unreadable(boxName);
        };
        AffineTransform toMm = new AffineTransform(outer.toMm());
        toMm.concatenate(new SvgTransforms(units, style.fontPx())
                .of(style.get("transform", "none"), style.get("transform-origin", ""), box));
        return frame.with(toMm);
    }

    /** What an element's own clip, mask and filter do to all within it. */
    private SvgFrame around(SvgNode node, SvgStyle style, SvgFrame frame) {
        SvgFrame with = frame;
        if (style.has("clip-path")) {
            with = clips.clipped(node, style, with);
        }
        if (style.has("mask")) {
            with = with.unsure("cutfiles.svg.mask");
        }
        if (style.has("filter")) {
            with = with.unsure("cutfiles.svg.filter");
        }
        return with;
    }

    private void oneOf(SvgNode node, SvgFrame frame, int depth) {
        for (SvgNode child : node.children) {
            boolean foreign = child.name.indexOf(' ') >= 0;
            if (child.has("systemLanguage") && !SvgKinds.isWanted(child)) {
                found.count(Remark.Kind.ASSUMED, "cutfiles.svg.language");
            }
            if (!foreign && !SvgKinds.isNeverDrawn(child) && SvgKinds.isWanted(child)) {
                element(child, frame, depth + 1);
                return;
            }
        }
    }

    /** @param use whose width and height count before the element's own, or null */
    private void inner(SvgNode node, SvgStyle style, SvgFrame frame, SvgStyle use, int depth) {
        SvgViewport around = frame.around();
        double width = side(use, style, "width", around.innerWidth());
        double height = side(use, style, "height", around.innerHeight());
        double[] box = SvgViewport.box(node.attribute("viewBox"));
        if (width <= 0 || height <= 0 || box != null && (box[2] == 0 || box[3] == 0)) {
            found.count(Remark.Kind.NOTE, "cutfiles.svg.hidden");
            return;
        }
        if (box != null && (box[2] < 0 || box[3] < 0)) {
            box = null;
        }
        AffineTransform toMm = new AffineTransform(frame.toMm());
        toMm.translate(
                units.px(orZero(style, "x"), around.innerWidth(), style.fontPx()),
                units.px(orZero(style, "y"), around.innerHeight(), style.fontPx()));
        SvgFrame inside = frame;
        String overflow = style.get("overflow", "hidden");
        if (!overflow.equals("visible") && !overflow.equals("auto")) {
            inside = inside.with(inside.clip()
                    .and(List.of(toMm.createTransformedShape(new Rectangle2D.Double(0, 0, width, height))), limit));
        }
        SvgViewport viewport = SvgViewport.of(width, height, box, node.attribute("preserveAspectRatio"));
        toMm.concatenate(viewport.contents());
        children(node, inside.with(toMm).with(viewport), depth);
    }

    private static String orZero(SvgStyle style, String property) {
        String text = style.get(property, "0");
        return text.equals("auto") ? "0" : text;
    }

    private double side(SvgStyle use, SvgStyle own, String name, double whole) {
        String text = use == null ? "auto" : use.get(name, "auto");
        double font = use == null ? own.fontPx() : use.fontPx();
        if (text.equals("auto")) {
            text = own.get(name, "auto");
            font = own.fontPx();
        }
        return units.px(text.equals("auto") ? "100%" : text, whole, font);
    }

    private void use(SvgNode use, SvgStyle style, SvgFrame frame, int depth) {
        String reference = use.attribute("href").strip();
        SvgNode target = tree.referred(reference);
        if (target == null) {
            boolean outside = !reference.isEmpty() && !reference.startsWith("#");
            found.count(
                    outside ? Remark.Kind.UNSURE : Remark.Kind.NOTE,
                    outside ? "cutfiles.svg.outside" : "cutfiles.svg.leads_nowhere");
            return;
        }
        if (isWithin(use, target) || !inUse.add(target)) {
            found.count(Remark.Kind.NOTE, "cutfiles.svg.leads_nowhere");
            return;
        }
        try {
            AffineTransform toMm = new AffineTransform(frame.toMm());
            toMm.translate(
                    units.px(orZero(style, "x"), frame.around().innerWidth(), style.fontPx()),
                    units.px(orZero(style, "y"), frame.around().innerHeight(), style.fontPx()));
            SvgFrame moved = frame.with(toMm);
            boolean symbol = target.name.equals("symbol");
            if (symbol || target.name.equals("svg")) {
                SvgStyle own = styles.of(target, style);
                if (shows(own)) {
                    inner(target, own, around(target, own, moved(target, own, moved)), style, depth);
                }
            } else {
                element(target, moved, depth + 1);
            }
        } finally {
            inUse.remove(target);
        }
    }

    /** A reference to what it stands in would never end. */
    private static boolean isWithin(SvgNode node, SvgNode around) {
        for (SvgNode each = node; each != null; each = each.parent) {
            if (each == around) {
                return true;
            }
        }
        return false;
    }
}
