package puzzleworkshop.display.blocks;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;

/** The top of a page: its one heading of the first level, what it is for, and what can be done with all of it. */
public class PageHead extends Div {

    public PageHead(String title, Component... beside) {
        add(new H1(title));
        add(beside);
        addClassName("pw-page-head");
    }
}
