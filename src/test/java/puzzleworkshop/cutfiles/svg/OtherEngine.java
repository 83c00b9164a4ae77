package puzzleworkshop.cutfiles.svg;

import java.awt.AlphaComposite;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.StringReader;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;
import org.apache.batik.bridge.BridgeContext;
import org.apache.batik.bridge.GVTBuilder;
import org.apache.batik.bridge.UserAgentAdapter;
import org.apache.batik.gvt.CompositeGraphicsNode;
import org.apache.batik.gvt.CompositeShapePainter;
import org.apache.batik.gvt.GraphicsNode;
import org.apache.batik.gvt.ShapeNode;
import org.apache.batik.gvt.ShapePainter;
import org.apache.batik.gvt.StrokeShapePainter;

/**
 * The stroked lines of an SVG as another engine draws them: Apache Batik 1.19 builds its tree of graphics nodes
 * (org.apache.batik.gvt), and what carries a stroke is measured in it.
 */
final class OtherEngine {

    private static final double MM_PER_PX = 25.4 / 96;
    private static final double FLATTENING_PX = 1e-4;

    private double minX = Double.POSITIVE_INFINITY;
    private double minY = Double.POSITIVE_INFINITY;
    private double maxX = Double.NEGATIVE_INFINITY;
    private double maxY = Double.NEGATIVE_INFINITY;
    private double length;

    /** @param minX and the others in millimetres */
    record Figures(double minX, double minY, double maxX, double maxY, double length) {}

    static Figures of(String svg) throws IOException {
        var document = new SAXSVGDocumentFactory(null).createDocument("file:drawing.svg", new StringReader(svg));
        BridgeContext context = new BridgeContext(new UserAgentAdapter());
        try {
            OtherEngine engine = new OtherEngine();
            engine.walk(new GVTBuilder().build(context, document));
            return new Figures(
                    engine.minX * MM_PER_PX,
                    engine.minY * MM_PER_PX,
                    engine.maxX * MM_PER_PX,
                    engine.maxY * MM_PER_PX,
                    engine.length * MM_PER_PX);
        } finally {
            context.dispose();
        }
    }

    private void walk(GraphicsNode node) {
        if (node.getComposite() instanceof AlphaComposite alpha && alpha.getAlpha() == 0) {
            return;
        }
        if (node instanceof CompositeGraphicsNode group) {
            for (Object child : group.getChildren()) {
                walk((GraphicsNode) child);
            }
        } else if (node instanceof ShapeNode shape && shape.isVisible() && isStroked(shape.getShapePainter())) {
            measure(shape.getShape(), shape.getGlobalTransform());
        }
    }

    private static boolean isStroked(ShapePainter painter) {
        if (painter instanceof CompositeShapePainter several) {
            for (int i = 0; i < several.getShapePainterCount(); i++) {
                if (isStroked(several.getShapePainter(i))) {
                    return true;
                }
            }
        }
        return painter instanceof StrokeShapePainter stroke && stroke.getPaint() != null;
    }

    private void measure(Shape shape, AffineTransform toPx) {
        double[] c = new double[6];
        double x = 0;
        double y = 0;
        double startX = 0;
        double startY = 0;
        for (PathIterator it = shape.getPathIterator(toPx, FLATTENING_PX); !it.isDone(); it.next()) {
            switch (it.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> {
                    startX = c[0];
                    startY = c[1];
                    x = c[0];
                    y = c[1];
                }
                case PathIterator.SEG_LINETO -> {
                    add(x, y, c[0], c[1]);
                    x = c[0];
                    y = c[1];
                }
                default -> {
                    add(x, y, startX, startY);
                    x = startX;
                    y = startY;
                }
            }
        }
    }

    private void add(double x, double y, double toX, double toY) {
        if (x == toX && y == toY) {
            return;
        }
        length += Math.hypot(toX - x, toY - y);
        minX = Math.min(minX, Math.min(x, toX));
        minY = Math.min(minY, Math.min(y, toY));
        maxX = Math.max(maxX, Math.max(x, toX));
        maxY = Math.max(maxY, Math.max(y, toY));
    }
}
