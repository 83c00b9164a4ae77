package puzzleworkshop.display.blocks;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;

/** Stands where nothing is yet: what would be here, and the way to it. */
public class EmptyState extends Div {

    public EmptyState(String what, String next, Component... ways) {
        add(new H2(what), new Paragraph(next));
        add(ways);
        addClassName("pw-empty");
    }
}
