package puzzleworkshop.placing.ui;

import java.awt.geom.AffineTransform;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.placing.DrawnPrint;

/** A print as it lies on the bed, or before it is measured as it lies turned: its edges, the outer cut and its numbered marks. */
final class PositionDrawing {

    private PositionDrawing() {}

    /**
     * @param place from the drawing turned by quarters to the bed; none before it is measured
     * @param tightest where least is left, on the quarter-turned drawing
     */
    static SvgBox of(
            DrawnPrint print,
            int turns,
            Optional<Similarity> place,
            Optional<Point> tightest,
            double uncertainty,
            Formatter figures) {
        Similarity lies = place.orElse(Similarity.NONE);
        AffineTransform quarters = AffineTransform.getQuadrantRotateInstance(turns);
        Bounds edges = print.edges(turns);
        CurvePath border = CurvePath.through(
                        List.of(
                                new Point(edges.minX(), edges.minY()),
                                new Point(edges.maxX(), edges.minY()),
                                new Point(edges.maxX(), edges.maxY()),
                                new Point(edges.minX(), edges.maxY())),
                        true)
                .transformed(lies.transform());
        CurvePath outline = print.outline(turns).transformed(lies.transform());
        Bounds all = border.bounds();
        double side = Math.max(all.width(), all.height());
        double room = side * 0.06;
        Svg svg = Svg.of(
                all.minX() - room,
                all.minY() - room,
                all.width() + 2 * room,
                all.height() + 2 * room,
                figures.text("placing.drawing"),
                figures.text(place.isPresent() ? "placing.drawing.words" : "placing.drawing.before"));
        svg.path(border.svgPathData(), "placing-print");
        svg.path(outline.svgPathData(), "placing-outline");
        double arm = side * 0.018;
        for (int i = 0; i < print.marks().size(); i++) {
            Point drawn = print.marks().get(i);
            java.awt.geom.Point2D q =
                    quarters.transform(new java.awt.geom.Point2D.Double(drawn.xMm(), drawn.yMm()), null);
            Point at = lies.of(new Point(q.getX(), q.getY()));
            svg.line(at.xMm() - arm, at.yMm(), at.xMm() + arm, at.yMm(), "placing-mark");
            svg.line(at.xMm(), at.yMm() - arm, at.xMm(), at.yMm() + arm, "placing-mark");
            double inX = (all.minX() + all.maxX()) / 2 > at.xMm() ? 1 : -1;
            double inY = (all.minY() + all.maxY()) / 2 > at.yMm() ? 1 : -1;
            svg.text(
                    at.xMm() + inX * side * 0.06,
                    at.yMm() + inY * side * 0.06 + side * 0.03,
                    side * 0.075,
                    "middle",
                    Integer.toString(i + 1),
                    "placing-number");
        }
        tightest.map(lies::of).ifPresent(at -> {
            double ring = Math.max(uncertainty, side * 0.015);
            svg.raw("<circle cx='" + Svg.n(at.xMm()) + "' cy='" + Svg.n(at.yMm()) + "' r='" + Svg.n(ring)
                    + "' class='placing-tightest'/>");
        });
        return new SvgBox("placing-drawing").draw(svg);
    }
}
