package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import java.util.Optional;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.offers.PromiseCheck;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.ui.OrderPanel;
import puzzleworkshop.workshop.SignedIn;

/** At the head of an order's page: take the quote as an order, or change what was agreed while that is possible. */
@org.springframework.stereotype.Component
class QuoteActions implements OrderPanel {

    private final Confirmations confirmations;
    private final PromiseCheck promises;
    private final Formatter figures;
    private final SignedIn signedIn;

    QuoteActions(Confirmations confirmations, PromiseCheck promises, Formatter figures, SignedIn signedIn) {
        this.confirmations = confirmations;
        this.promises = promises;
        this.figures = figures;
        this.signedIn = signedIn;
    }

    @Override
    public int place() {
        return 0;
    }

    @Override
    public boolean inHead() {
        return true;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        Div actions = new Div();
        actions.addClassName("pw-row");
        if (order.state() == OrderState.QUOTE) {
            actions.add(new ConfirmQuote(order, confirmations, promises, figures, signedIn.name(), changed));
        }
        if (order.mayStillChange() && !order.puzzle().pattern().isOnePiece()) {
            Anchor change = new Anchor("orders/new/" + order.number(), figures.text("orders.action.change"));
            change.addClassName("pw-link-button");
            actions.add(change);
        }
        if (order.state() != OrderState.QUOTE) {
            Anchor again = new Anchor("orders/new?again=" + order.number(), figures.text("orders.again"));
            again.addClassName("pw-link-button");
            actions.add(again);
        }
        return actions.getComponentCount() == 0 ? Optional.empty() : Optional.of(actions);
    }
}
