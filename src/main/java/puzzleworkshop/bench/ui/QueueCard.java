package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeButton;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPreview;
import puzzleworkshop.planning.ui.PlanVerdict;

/** One order in a stage's queue: a press opens it, the box gathers it for a tick together. */
@StyleSheet("context://planning.css")
class QueueCard extends Div {

    QueueCard(
            Waiting waiting,
            Formatter figures,
            boolean open,
            boolean gathered,
            Consumer<Waiting> choose,
            BiConsumer<OrderId, Boolean> gather) {
        Order order = waiting.order();
        addClassName("bench-card");
        Checkbox with = new Checkbox(gathered, e -> gather.accept(order.id(), e.getValue()));
        with.setAriaLabel(getTranslation("bench.gather", order.number()));
        List<Markup> lines = new ArrayList<>();
        lines.add(Markup.span("bench-card-who", order.customer().name()));
        lines.add(Markup.span(
                "pw-small",
                figures.text(
                        "bench.card.what",
                        order.number(),
                        order.puzzle().finished(),
                        order.puzzle().pieces(),
                        order.quantity())));
        boolean toBeCollected = waiting.entry().toBeCollected();
        waiting.planned().filter(work -> !toBeCollected).ifPresent(work -> {
            LocalTime at = work.start().toLocalTime();
            lines.add(Markup.span(
                    "pw-small",
                    figures.text(
                            "bench.card.planned",
                            work.start().toLocalDate(),
                            "%02d:%02d".formatted(at.getHour(), at.getMinute()))));
        });
        lines.add(
                toBeCollected
                        ? Verdict.of(Verdict.Kind.WAIT, figures.text("planning.card.collect"))
                        : PlanVerdict.of(waiting.entry().outlook(), figures));
        waiting.running()
                .ifPresent(running ->
                        lines.add(Markup.span("bench-running", figures.text("bench.clock.by", running.who()))));
        waiting.mayNotInShort().ifPresent(why -> {
            with.setEnabled(false);
            lines.add(Markup.span("pw-small bench-card-may-not", figures.say(why)));
        });
        NativeButton press = new NativeButton();
        press.addClickListener(e -> choose.accept(waiting));
        press.add(
                new OrderPreview(order, OrderPreview.Width.SMALL, figures),
                new Still(Markup.div("bench-card-words", lines)));
        press.getElement().setAttribute("aria-pressed", Boolean.toString(open));
        add(with, press);
        if (open) {
            addClassName("bench-card-open");
        }
    }
}
