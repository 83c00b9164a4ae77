package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.UI;
import java.util.HashMap;
import java.util.Map;

/**
 * Tracking numbers typed in this tab of the browser and not kept yet, by the id of a parcel's first order. News show cards
 * again while somebody types, so what is typed does not live in the card.
 */
record TypedNumbers(Map<Long, String> byOrder) {

    static TypedNumbers here() {
        UI tab = UI.getCurrentOrThrow();
        TypedNumbers typed = ComponentUtil.getData(tab, TypedNumbers.class);
        if (typed == null) {
            typed = new TypedNumbers(new HashMap<>());
            ComponentUtil.setData(tab, TypedNumbers.class, typed);
        }
        return typed;
    }
}
