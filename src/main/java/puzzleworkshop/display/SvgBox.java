package puzzleworkshop.display;

import com.vaadin.flow.component.Html;
import com.vaadin.flow.component.html.Div;

/** A place on a screen for one drawing that may be redrawn. */
public class SvgBox extends Div {

    public SvgBox(String... cssClasses) {
        addClassNames(cssClasses);
    }

    public SvgBox draw(Svg svg) {
        removeAll();
        add(new Html(svg.markup()));
        return this;
    }
}
