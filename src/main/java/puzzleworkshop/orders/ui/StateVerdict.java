package puzzleworkshop.orders.ui;

import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.orders.Order;

/** Where an order stands, as a word with its icon. */
public class StateVerdict extends Still {

    public StateVerdict(Order order, Punctuality punctuality, Formatter figures) {
        super(of(order, punctuality, figures));
    }

    /** The same within what only stands there. */
    static Markup of(Order order, Punctuality punctuality, Formatter figures) {
        Optional<Punctuality.Concern> concern = punctuality.of(order);
        return Verdict.of(
                concern.map(Punctuality.Concern::kind).orElseGet(() -> kind(order)),
                concern.map(c -> figures.text("orders.and-day", word(order, figures), c.words()))
                        .orElseGet(() -> word(order, figures)));
    }

    private static Verdict.Kind kind(Order order) {
        return switch (order.state()) {
            case QUOTE -> Verdict.Kind.WAIT;
            case CONFIRMED -> order.waitsForApproval() ? Verdict.Kind.WAIT : Verdict.Kind.GOOD;
            case HANDED_OVER -> Verdict.Kind.WARN;
            case CLOSED -> Verdict.Kind.GOOD;
            case CANCELLED -> Verdict.Kind.BAD;
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
