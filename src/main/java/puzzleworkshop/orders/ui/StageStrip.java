package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.dom.Element;
import java.util.Optional;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.workshop.Stage;

/** How far an order is, as a short strip: one mark for each stage, with the words for those who cannot see it. */
public class StageStrip extends Div {

    public StageStrip(Order order) {
        addClassName("pw-strip");
        Optional<Stage> next = order.next();
        boolean allDone = order.state() == OrderState.HANDED_OVER || order.state() == OrderState.CLOSED;
        for (Stage stage : Stage.values()) {
            Element mark = new Element("i");
            mark.setAttribute("title", getTranslation(stage.textKey()));
            if (allDone || next.isPresent() && stage.compareTo(next.get()) < 0) {
                mark.setAttribute("data-done", true);
            } else if (next.equals(Optional.of(stage))) {
                mark.setAttribute("data-next", true);
            }
            getElement().appendChild(mark);
        }
        getElement().setAttribute("role", "img");
        getElement()
                .setAttribute(
                        "aria-label",
                        next.map(stage -> getTranslation("orders.next", getTranslation(stage.textKey())))
                                .orElseGet(() -> getTranslation(order.state().textKey())));
    }
}
