package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.select.Select;
import puzzleworkshop.display.Formatter;

/** By how many quarters, clockwise, a print lies turned, as one sees it from the front. */
class LiesTurned extends Select<Integer> {

    LiesTurned(int turns, Formatter figures) {
        setLabel(figures.text("placing.turned"));
        setItems(0, 1, 2, 3);
        setItemLabelGenerator(quarters -> figures.text("placing.turned." + quarters));
        setValue(turns);
    }
}
