package puzzleworkshop.display;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasStyle;
import com.vaadin.flow.dom.Element;
import java.util.List;

/** Shows {@link Markup}: one element for the server, however much stands in it. Its outermost element is the component's own. */
public class Still extends Component implements HasStyle {

    private String words = "";

    /** @param whole an element */
    public Still(Markup whole) {
        super(new Element(whole.tag()));
        whole.attributes().forEach(attribute -> {
            if (attribute.name().equals("class")) {
                addClassNames(attribute.value().split(" "));
            } else {
                getElement().setAttribute(attribute.name(), attribute.value());
            }
        });
        put(whole.inside(), whole.words());
    }

    /** Shows other markup inside, in place of what was there. */
    protected final void show(List<Markup> inside) {
        put(Markup.html(inside), Markup.said(inside));
    }

    /** What a person reads in it, with blanks between the parts. */
    public final String words() {
        return words;
    }

    private void put(String html, String said) {
        words = said;
        getElement().setProperty("innerHTML", html);
    }
}
