package puzzleworkshop.cutfiles.svg;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.cutfiles.svg.values.SvgTransforms;
import puzzleworkshop.cutfiles.svg.values.SvgUnits;
import puzzleworkshop.cutfiles.svg.values.SvgViewport;
import puzzleworkshop.cutfiles.svg.values.Unreadable;
import puzzleworkshop.measure.WorkLimit;

/** Clip paths (CSS Masking level 1, 6): the union of their shapes, in user units or in shares of what is clipped. */
final class SvgClips {

    private static final String UNSURE = "cutfiles.svg.clip";
    private static final int DEEPEST = 8;

    private final SvgTree tree;
    private final SvgStyles styles;
    private final SvgShapes shapes;
    private final SvgUnits units;
    private final WorkLimit limit;

    SvgClips(SvgTree tree, SvgStyles styles, SvgShapes shapes, SvgUnits units, WorkLimit limit) {
        this.tree = tree;
        this.styles = styles;
        this.shapes = shapes;
        this.units = units;
        this.limit = limit;
    }

    /** The frame with the element's clip; not sure of its lines where the clip cannot be worked out. */
    SvgFrame clipped(SvgNode node, SvgStyle style, SvgFrame frame) {
        try {
            String value = style.get("clip-path", "none");
            if (!value.startsWith("url(")) {
                throw new Unreadable(value);
            }
            SvgNode clip = tree.referred(SvgPaint.reference(value));
            return clip == null || !clip.name.equals("clipPath")
                    ? frame // SVG 2, 14.3.5: a reference that leads nowhere clips nothing
                    : frame.with(clip(clip, node, style, frame, 0));
        } catch (Unreadable unknown) {
            return frame.unsure(UNSURE);
        }
    }

    private SvgClip clip(SvgNode clip, SvgNode node, SvgStyle style, SvgFrame frame, int depth) {
        if (depth > DEEPEST) {
            throw new Unreadable("clips of clips");
        }
        SvgStyle clipStyle = styles.of(clip, SvgStyle.INITIAL);
        AffineTransform toMm = new AffineTransform(frame.toMm());
        if (clip.attribute("clipPathUnits").strip().equals("objectBoundingBox")) {
            Rectangle2D box = boundsOf(node, style, frame.around());
            toMm.translate(box.getX(), box.getY());
            toMm.scale(box.getWidth(), box.getHeight());
        }
        transform(toMm, clipStyle, frame.around());
        SvgClip all = frame.clip();
        if (clipStyle.has("clip-path")) {
            SvgNode outer = tree.referred(SvgPaint.reference(clipStyle.get("clip-path", "none")));
            if (outer != null && outer.name.equals("clipPath")) {
                all = clip(outer, node, style, frame, depth + 1);
            }
        }
        List<Shape> union = new ArrayList<>();
        for (SvgNode child : clip.children) {
            limit.steps(1);
            add(union, child, styles.of(child, clipStyle), toMm, frame.around(), depth);
        }
        return all.and(union, limit);
    }

    private void add(
            List<Shape> union, SvgNode child, SvgStyle style, AffineTransform outer, SvgViewport around, int depth) {
        if (SvgKinds.isNeverDrawn(child)
                || style.get("display", "inline").equals("none")
                || !style.get("visibility", "visible").equals("visible")
                || !SvgKinds.isWanted(child)) {
            return;
        }
        if (style.has("clip-path")) {
            throw new Unreadable("a clip on a part of a clip");
        }
        AffineTransform toMm = new AffineTransform(outer);
        transform(toMm, style, around);
        if (SvgShapes.isShape(child.name)) {
            Path2D outline = shapes.of(child, style, around).outline();
            boolean evenOdd = style.get("clip-rule", "nonzero").equals("evenodd");
            outline.setWindingRule(evenOdd ? Path2D.WIND_EVEN_ODD : Path2D.WIND_NON_ZERO);
            outline.transform(toMm);
            union.add(outline);
        } else if (child.name.equals("use") && depth < DEEPEST) {
            SvgNode target = tree.referred(child.attribute("href"));
            if (target == null) {
                return;
            }
            toMm.translate(
                    units.px(style.get("x", "0"), around.innerWidth(), style.fontPx()),
                    units.px(style.get("y", "0"), around.innerHeight(), style.fontPx()));
            add(union, target, styles.of(target, style), toMm, around, depth + 1);
        } else {
            throw new Unreadable(child.name);
        }
    }

    private void transform(AffineTransform toMm, SvgStyle style, SvgViewport around) {
        if (style.has("transform")) {
            if (!style.get("transform-box", "view-box").equals("view-box")) {
                throw new Unreadable("transform-box");
            }
            toMm.concatenate(new SvgTransforms(units, style.fontPx())
                    .of(
                            style.get("transform", "none"),
                            style.get("transform-origin", ""),
                            new Rectangle2D.Double(0, 0, around.innerWidth(), around.innerHeight())));
        }
    }

    private Rectangle2D boundsOf(SvgNode node, SvgStyle style, SvgViewport around) {
        if (!SvgShapes.isShape(node.name)) {
            throw new Unreadable(node.name);
        }
        return shapes.of(node, style, around).outline().getBounds2D();
    }
}
