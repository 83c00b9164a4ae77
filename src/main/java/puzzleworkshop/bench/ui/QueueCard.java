package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.Span;
import java.time.LocalTime;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPreview;
import puzzleworkshop.planning.ui.PlanVerdict;

/** One order in a stage's queue: a press opens it, the box gathers it for a tick together. */
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
        Span who = new Span(order.customer().name());
        who.addClassName("bench-card-who");
        Span what = new Span(getTranslation(
                "bench.card.what",
                order.number(),
                figures.size(order.puzzle().finished()),
                order.puzzle().pieces(),
                order.quantity()));
        what.addClassName("pw-small");
        Div words = new Div(who, what);
        words.addClassName("bench-card-words");
        waiting.planned().ifPresent(work -> {
            LocalTime at = work.start().toLocalTime();
            Span when = new Span(getTranslation(
                    "bench.card.planned",
                    figures.day(work.start().toLocalDate()),
                    "%02d:%02d".formatted(at.getHour(), at.getMinute())));
            when.addClassName("pw-small");
            words.add(when);
        });
        words.add(new PlanVerdict(waiting.entry().outlook(), figures));
        waiting.running().ifPresent(running -> {
            Span clock = new Span(getTranslation("bench.clock.by", running.who()));
            clock.addClassName("bench-running");
            words.add(clock);
        });
        NativeButton press = new NativeButton();
        press.addClickListener(e -> choose.accept(waiting));
        press.add(new OrderPreview(order, OrderPreview.Width.SMALL), words);
        press.getElement().setAttribute("aria-pressed", Boolean.toString(open));
        waiting.mayNotInShort().ifPresent(why -> {
            with.setEnabled(false);
            Span reason = new Span(figures.say(why));
            reason.addClassNames("pw-small", "bench-card-may-not");
            words.add(reason);
        });
        add(with, press);
        if (open) {
            addClassName("bench-card-open");
        }
    }
}
