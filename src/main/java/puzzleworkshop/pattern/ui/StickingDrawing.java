package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.geometry.CurvePath;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.StickingCheck;

/**
 * The print with the outer cut where it should lie, and where it lies at the worst that sticking by hand allows; what
 * leaves the print is filled. One unit is one millimetre.
 */
@StyleSheet("context://pattern.css")
class StickingDrawing extends SvgBox {

    private static final double ROOM = 4;

    StickingDrawing(StickingCheck check, CurvePath outline, Size finished) {
        super("pattern-sticking");
        double o = check.overhang().mm();
        double w = finished.width().mm();
        double h = finished.height().mm();
        double around = ROOM + o;
        double stroke = Math.max(w, h) / 400;
        Svg svg = Svg.of(-around, -around, w + 2 * around, h + 2 * around, getTranslation("pattern.sticking.drawing"),
                getTranslation("pattern.sticking.drawing.words",
                        getTranslation("pattern.sticking.side." + check.narrowest().name())));
        String worst = check.worst().of(outline, finished).svgPathData();
        svg.path(worst, "pattern-sticking-out");
        svg.rect(-o, -o, w + 2 * o, h + 2 * o, "pattern-sticking-print");
        svg.raw("<g fill='none' stroke-width='" + Svg.n(stroke) + "'>");
        svg.path(outline.svgPathData(), "pattern-sticking-meant");
        svg.path(worst, "pattern-sticking-worst");
        svg.end();
        draw(svg);
    }
}
