package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Image;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.ui.OrderPanel;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.progress.Tick;

/** On the order's page: how far it is, who did what, and what went wrong. */
@org.springframework.stereotype.Component
class ProgressPanel implements OrderPanel {

    private final Bench bench;
    private final Formatter figures;

    ProgressPanel(Bench bench, Formatter figures) {
        this.bench = bench;
        this.figures = figures;
    }

    @Override
    public int place() {
        return 10;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        if (order.state() == OrderState.QUOTE) {
            return Optional.empty();
        }
        Div panel = new Box();
        panel.add(new H2(figures.text("bench.progress")));
        order.next().ifPresent(next -> {
            Anchor link = new Anchor(
                    "bench/" + next.name().toLowerCase(Locale.ROOT) + "?order=" + order.number(),
                    figures.text("bench.progress.next", figures.text(next.textKey())));
            panel.add(link);
        });
        List<Markup> done = bench.ticks(order.id()).stream().map(this::line).toList();
        if (!done.isEmpty()) {
            panel.add(new Still(Markup.of("ol", "", done)));
        }
        for (Rework mishap : bench.mishaps(order.id())) {
            Note wrong = new Note(
                    Note.Kind.WARN,
                    figures.text(
                            mishap.materialLost().isZero()
                                    ? "bench.progress.wrong.no-material"
                                    : "bench.progress.wrong",
                            figures.text(mishap.what().textKey()),
                            mishap.who(),
                            figures.moment(mishap.at()),
                            figures.text(mishap.againFrom().textKey()),
                            figures.say(mishap.workLost()),
                            figures.money(mishap.materialLost())));
            panel.add(wrong);
        }
        Div photos = new Div();
        photos.addClassName("bench-photos");
        bench.photos(order.id()).forEach(photo -> {
            Anchor full = new Anchor(
                    "bench-photos/" + photo.id(),
                    new Image(
                            "bench-photos/" + photo.id(),
                            figures.text(
                                    "bench.photo.of",
                                    figures.text(photo.stage().textKey()),
                                    photo.who(),
                                    figures.moment(photo.at()))));
            full.setTarget("_blank");
            photos.add(full);
        });
        panel.add(photos);
        return Optional.of(panel);
    }

    private Markup line(Tick tick) {
        String words = figures.text(
                tick.undone() ? "bench.progress.undone" : "bench.progress.done",
                figures.text(tick.stage().textKey()),
                tick.who(),
                figures.moment(tick.at()));
        String took =
                tick.minutes().map(minutes -> " · " + figures.minutes(minutes)).orElse("");
        return Markup.of("li", tick.undone() ? "pw-soft" : "", words + took);
    }

    /** Brings its own look along, wherever it is shown. */
    @StyleSheet("context://bench.css")
    private static final class Box extends Div {
        Box() {
            addClassNames("pw-section", "bench-progress");
        }
    }
}
