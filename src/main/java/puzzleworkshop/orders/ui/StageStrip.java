package puzzleworkshop.orders.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.workshop.Stage;

/** How far an order is, as a short strip: one mark for each stage, with the words for those who cannot see it. */
public class StageStrip extends Still {

    public StageStrip(Order order, Formatter figures) {
        super(of(order, figures));
    }

    /** The same within what only stands there. */
    public static Markup of(Order order, Formatter figures) {
        Optional<Stage> next = order.next();
        boolean allDone = order.state() == OrderState.HANDED_OVER || order.state() == OrderState.CLOSED;
        List<Markup> marks = new ArrayList<>();
        for (Stage stage : Stage.values()) {
            boolean done = allDone || next.isPresent() && stage.compareTo(next.get()) < 0;
            Markup mark = Markup.of("i", "").with("title", figures.text(stage.textKey()));
            marks.add(
                    done
                            ? mark.with("data-done", "")
                            : next.equals(Optional.of(stage)) ? mark.with("data-next", "") : mark);
        }
        return Markup.div("pw-strip", marks)
                .with("role", "img")
                .with(
                        "aria-label",
                        next.map(stage -> figures.text("orders.next", figures.text(stage.textKey())))
                                .orElseGet(() -> figures.text(order.state().textKey())));
    }
}
