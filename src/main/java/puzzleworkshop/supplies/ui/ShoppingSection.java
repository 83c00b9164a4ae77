package puzzleworkshop.supplies.ui;

import com.vaadin.flow.component.Component;

/** What another room adds to the shopping list; beans of this type stand below the supplies to buy. */
@FunctionalInterface
public interface ShoppingSection {

    Component show();
}
