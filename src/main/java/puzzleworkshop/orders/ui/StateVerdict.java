package puzzleworkshop.orders.ui;

import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.orders.Order;

/** Where an order stands, as a word with its icon. */
public class StateVerdict extends Verdict {

    public StateVerdict(Order order, Punctuality punctuality, Formatter figures) {
        this(order, punctuality.of(order), figures);
    }

    private StateVerdict(Order order, Optional<Punctuality.Concern> concern, Formatter figures) {
        super(
                concern.map(Punctuality.Concern::kind).orElseGet(() -> kind(order)),
                concern.map(c -> figures.text("orders.and-day", word(order, figures), c.words()))
                        .orElseGet(() -> word(order, figures)));
    }

    private static Kind kind(Order order) {
        return switch (order.state()) {
            case QUOTE -> Kind.WAIT;
            case CONFIRMED -> order.waitsForApproval() ? Kind.WAIT : Kind.GOOD;
            case HANDED_OVER -> Kind.WARN;
            case CLOSED -> Kind.GOOD;
            case CANCELLED -> Kind.BAD;
        };
    }

    private static String word(Order order, Formatter figures) {
        return switch (order.state()) {
            case CONFIRMED ->
                order.waitsForApproval()
                        ? figures.text("orders.waits-for-approval")
                        : figures.text(
                                "orders.next",
                                figures.text(order.next().orElseThrow().textKey()));
            case HANDED_OVER -> figures.text("orders.payment-open");
            case QUOTE, CLOSED, CANCELLED -> figures.text(order.state().textKey());
        };
    }
}
