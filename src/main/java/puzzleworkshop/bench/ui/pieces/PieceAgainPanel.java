package puzzleworkshop.bench.ui.pieces;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.offers.PieceOrders;
import puzzleworkshop.offers.PieceOrders.PieceOrder;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.ui.OrderPanel;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.mesh.PatternCache;

/** On the order's page: one piece made again, lost by the customer or broken at the bench. */
@org.springframework.stereotype.Component
class PieceAgainPanel implements OrderPanel {

    private static final int AFTER_THE_CUT_LINES = 46;

    private final PatternCache patterns;
    private final PieceAgainParts parts;
    private final Formatter figures;

    PieceAgainPanel(PatternCache patterns, PieceAgainParts parts, Formatter figures) {
        this.patterns = patterns;
        this.parts = parts;
        this.figures = figures;
    }

    @Override
    public int place() {
        return AFTER_THE_CUT_LINES;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        Div section = new Div();
        section.addClassName("pw-section");
        Optional<PieceOrder> whole = parts.pieceOf(order);
        if (whole.isPresent()) {
            section.add(new Anchor(
                    "orders/" + whole.get().ofNumber(),
                    figures.text(
                            "bench.again.part-of",
                            whole.get().piece(),
                            whole.get().ofNumber())));
            return Optional.of(section);
        }
        if (order.state() == OrderState.QUOTE) {
            return Optional.empty();
        }
        try {
            CutPattern pattern = patterns.of(order.puzzle().pattern());
            Details details = new Details(figures.text("bench.again"));
            AtomicBoolean forNothing = new AtomicBoolean();
            details.getElement().addEventListener(PieceOrders.FOR_NOTHING, event -> {
                forNothing.set(true);
                again(details).ifPresent(PieceAgain::forNothing);
            });
            // drawing and fields are made for those who lost a piece, not for everybody who opens the order
            details.addOpenedChangeListener(event -> {
                if (event.isOpened() && again(details).isEmpty()) {
                    PieceAgain again = new PieceAgain(order, pattern, parts, figures);
                    details.add(again);
                    if (forNothing.get()) {
                        again.forNothing();
                    }
                }
            });
            details.setId(PieceOrders.PLACE);
            section.add(details);
        } catch (Refused refused) {
            section.add(new Paragraph(figures.say(refused)));
        }
        return Optional.of(section);
    }

    private static Optional<PieceAgain> again(Details details) {
        return details.getContent().map(PieceAgain.class::cast).findAny();
    }
}
