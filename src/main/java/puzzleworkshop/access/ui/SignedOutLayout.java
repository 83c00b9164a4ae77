package puzzleworkshop.access.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Main;

/** The page a stranger sees: one card on paper, the workshop's sign above it. */
@StyleSheet("context://access.css")
abstract class SignedOutLayout extends Main {

    private final Div card = new Div();

    SignedOutLayout() {
        addClassName("access-threshold");
        card.addClassName("access-card");
        add(card);
    }

    void put(Component... parts) {
        card.add(parts);
    }

    void clear() {
        card.removeAll();
    }
}
