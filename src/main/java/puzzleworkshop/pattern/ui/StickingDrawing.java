package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.judged.StickingCheck;

/**
 * The print with the outer cut where it should lie, and where it lies at the worst that sticking by hand allows; what
 * leaves the print is filled. Once whole, and once near the place where most leaves it. One unit is one millimetre.
 */
@StyleSheet("context://pattern.css")
class StickingDrawing extends Div {

    private static final double ROOM_MM = 4;
    /** Half width and half height of the part that is drawn large. */
    private static final double NEAR_X_MM = 15;

    private static final double NEAR_Y_MM = 9;
    private static final double FLATTENING_MM = 0.05;

    private final transient StickingCheck check;
    private final transient CurvePath outline;
    private final transient Size finished;

    StickingDrawing(StickingCheck check, CurvePath outline, Size finished) {
        this.check = check;
        this.outline = outline;
        this.finished = finished;
        addClassName("pattern-sticking");
        double around = ROOM_MM + check.overhang().mm();
        double width = finished.width().mm() + 2 * around;
        double height = finished.height().mm() + 2 * around;
        Point out = farthestOut();
        add(
                drawing(-around, -around, width, height, "pattern.sticking.drawing"),
                drawing(
                        out.xMm() - NEAR_X_MM,
                        out.yMm() - NEAR_Y_MM,
                        2 * NEAR_X_MM,
                        2 * NEAR_Y_MM,
                        "pattern.sticking.drawing.near"));
    }

    private SvgBox drawing(double x, double y, double width, double height, String title) {
        double overhang = check.overhang().mm();
        Svg svg = Svg.of(
                x,
                y,
                width,
                height,
                getTranslation(title),
                getTranslation(
                        "pattern.sticking.drawing.words",
                        getTranslation(
                                "pattern.sticking.side." + check.narrowest().name())));
        String worst = check.worst().of(outline, finished).svgPathData();
        svg.path(worst, "pattern-sticking-out");
        svg.rect(
                -overhang,
                -overhang,
                finished.width().mm() + 2 * overhang,
                finished.height().mm() + 2 * overhang,
                "pattern-sticking-print");
        svg.raw("<g fill='none' stroke-width='" + Svg.n(width / 300) + "'>");
        svg.path(outline.svgPathData(), "pattern-sticking-meant");
        svg.path(worst, "pattern-sticking-worst");
        return new SvgBox("pattern-sticking-part").draw(svg.end());
    }

    private Point farthestOut() {
        List<Point> points = check.worst().of(outline, finished).flattened(FLATTENING_MM);
        ToDoubleFunction<Point> reach = switch (check.narrowest()) {
            case LEFT -> point -> -point.xMm();
            case TOP -> point -> -point.yMm();
            case RIGHT -> Point::xMm;
            case BOTTOM -> Point::yMm;
        };
        return points.stream().max(Comparator.comparingDouble(reach)).orElseThrow();
    }
}
