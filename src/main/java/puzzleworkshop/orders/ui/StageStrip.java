package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.html.Div;
import java.util.Optional;
import org.springframework.web.util.HtmlUtils;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.workshop.Stage;

/** How far an order is, as a short strip: one mark for each stage, with the words for those who cannot see it. */
public class StageStrip extends Div {

    public StageStrip(Order order) {
        addClassName("pw-strip");
        Optional<Stage> next = order.next();
        boolean allDone = order.state() == OrderState.HANDED_OVER || order.state() == OrderState.CLOSED;
        // One element for the server, however many marks: a list has fifty of these.
        StringBuilder marks = new StringBuilder();
        for (Stage stage : Stage.values()) {
            boolean done = allDone || next.isPresent() && stage.compareTo(next.get()) < 0;
            marks.append("<i title=\"")
                    .append(HtmlUtils.htmlEscape(getTranslation(stage.textKey())))
                    .append('"')
                    .append(done ? " data-done" : next.equals(Optional.of(stage)) ? " data-next" : "")
                    .append("></i>");
        }
        getElement().setProperty("innerHTML", marks.toString());
        getElement().setAttribute("role", "img");
        getElement()
                .setAttribute(
                        "aria-label",
                        next.map(stage -> getTranslation("orders.next", getTranslation(stage.textKey())))
                                .orElseGet(() -> getTranslation(order.state().textKey())));
    }
}
