package puzzleworkshop.display.blocks;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;

/** A part of a page with a heading of its own. */
public class PageSection extends Div {

    public PageSection(String heading, Component... parts) {
        add(new H2(heading));
        add(parts);
        addClassName("pw-section");
    }
}
