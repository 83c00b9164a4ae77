package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import java.util.function.Consumer;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.KeptWhole;

/**
 * The cut lines of a puzzle to scale, over its picture or over bare birch: the face of an order on lists, cards, the
 * bench and the customer's page.
 */
@StyleSheet("context://pattern.css")
public class PatternDrawing extends SvgBox {

    private static final String TAP = "new DOMPoint(event.clientX,"
            + " event.clientY).matrixTransform(element.querySelector('svg').getScreenCTM().inverse()).";

    private static final String TAP_X = TAP + "x";
    private static final String TAP_Y = TAP + "y";

    public PatternDrawing() {
        super("pattern-drawing");
    }

    public PatternDrawing(CutPattern pattern, String pictureAddress) {
        this();
        show(pattern, pictureAddress);
    }

    /** @param pictureAddress where the cropped picture of the puzzle is served; empty for bare wood */
    public PatternDrawing show(CutPattern pattern, String pictureAddress) {
        draw(svg(pattern, pictureAddress, title(), description(pattern)));
        return this;
    }

    /** Tells where it is tapped, in millimetres of the puzzle. */
    public void onTap(Consumer<Point> tapped) {
        getElement()
                .addEventListener(
                        "click",
                        event -> tapped.accept(Point.of(
                                event.getEventData().path(TAP_X).asDouble(),
                                event.getEventData().path(TAP_Y).asDouble())))
                .addEventData(TAP_X)
                .addEventData(TAP_Y);
    }

    private String title() {
        return getTranslation("pattern.drawing.title");
    }

    private String description(CutPattern pattern) {
        Size size = pattern.spec().size();
        return getTranslation(
                "pattern.drawing.description",
                pattern.pieces().size(),
                pattern.spec().grid().columns(),
                pattern.spec().grid().rows(),
                Math.round(size.width().mm()),
                Math.round(size.height().mm()),
                pattern.spec().seed());
    }

    /** The drawing alone, for tickets and pages without Vaadin; one unit is one millimetre. */
    public static Svg svg(CutPattern pattern, String pictureAddress, String title, String description) {
        double width = pattern.spec().size().width().mm();
        double height = pattern.spec().size().height().mm();
        String outline = pattern.outlinePathData();
        // two strokes, dark on pale, stay visible on any picture; widths grow with the puzzle so that they look alike
        double stroke = Math.max(width, height) / 640;
        Svg svg = Svg.of(-stroke, -stroke, width + 2 * stroke, height + 2 * stroke, title, description);
        String clip = "pattern-" + Integer.toHexString(pattern.spec().hashCode());
        svg.raw("<clipPath id='" + clip + "'><path d='" + outline + "'/></clipPath>");
        if (pictureAddress.isEmpty()) {
            svg.path(outline, "pattern-wood");
        } else {
            svg.raw("<g clip-path='url(#" + clip + ")'>")
                    .image(0, 0, width, height, pictureAddress)
                    .end();
        }
        svg.raw("<g fill='none' stroke-linejoin='round' stroke-linecap='round'>");
        if (!pictureAddress.isEmpty()) {
            svg.raw("<path class='pattern-halo' stroke-width='" + Svg.n(stroke * 2.4) + "' d='"
                    + pattern.innerPathData() + "'/>");
        }
        svg.raw("<path class='" + (pictureAddress.isEmpty() ? "pattern-line" : "pattern-line-on-picture")
                + "' stroke-width='" + Svg.n(stroke) + "' d='" + pattern.innerPathData() + outline + "'/>");
        for (KeptWhole place : pattern.spec().layout().keptWhole()) {
            svg.raw("<path class='pattern-kept' stroke-dasharray='" + Svg.n(3 * stroke) + "' stroke-width='"
                    + Svg.n(stroke) + "' d='" + place.outline().svgPathData() + "'/>");
        }
        return svg.end();
    }
}
