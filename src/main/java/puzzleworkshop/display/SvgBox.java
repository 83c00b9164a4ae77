package puzzleworkshop.display;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;

/**
 * A place on a screen for one drawing that may be redrawn. The markup goes to the browser as it is, because Flow's own
 * parser would write the names of attributes small and lose the view box.
 */
public class SvgBox extends Div {

    public SvgBox(String... cssClasses) {
        addClassNames(cssClasses);
    }

    public SvgBox draw(Svg svg) {
        removeAll();
        getElement().setProperty("innerHTML", svg.markup());
        return this;
    }

    /** A small fixed drawing of ours within a line of text. */
    public static Span inline(String markup) {
        Span place = new Span();
        place.addClassName("pw-mark");
        place.getElement().setProperty("innerHTML", markup);
        return place;
    }
}
