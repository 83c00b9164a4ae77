package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import java.util.Optional;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.Stage;

/** Under the thumb after a tick: the next stage of the same order, and the next order of the same stage. */
final class AfterTick extends Div {

    /**
     * @param done the order that was ticked
     * @param onShow the order whose card is open now
     * @param stay told when the open card is the one to go on with
     */
    AfterTick(Optional<Order> done, Optional<Order> onShow, Stage stage, Runnable stay) {
        addClassName("bench-next");
        getElement().setAttribute("role", "group");
        getElement().setAttribute("aria-label", getTranslation("bench.next"));
        done.flatMap(order -> order.next().map(next -> sameOrder(order, next))).ifPresent(this::add);
        onShow.filter(order -> order.next().equals(Optional.of(stage)))
                .map(order -> sameStage(order, stage, stay))
                .ifPresent(this::add);
    }

    boolean leadsOn() {
        return getComponentCount() > 0;
    }

    private Anchor sameOrder(Order order, Stage next) {
        Anchor go = new Anchor(
                StageBar.address(next) + "?order=" + order.number(),
                getTranslation("bench.next.order", order.customer().name(), getTranslation(next.textKey())));
        go.addClassName("bench-next-order");
        return go;
    }

    private Button sameStage(Order order, Stage stage, Runnable stay) {
        return new Button(
                getTranslation(
                        "bench.next.stage",
                        getTranslation(stage.textKey()),
                        order.customer().name()),
                press -> stay.run());
    }
}
