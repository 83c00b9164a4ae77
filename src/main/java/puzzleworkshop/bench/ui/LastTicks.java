package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.progress.Tick;
import puzzleworkshop.workshop.SignedIn;

/** The last ticks, each with a way to take it back. */
final class LastTicks extends Div {

    private static final int MOST = 2;

    private final transient Bench bench;
    private final transient Orders orders;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final transient Runnable takenBack;

    /** @param takenBack told after a tick was taken back */
    LastTicks(Bench bench, Orders orders, Formatter figures, SignedIn signedIn, Runnable takenBack) {
        this.bench = bench;
        this.orders = orders;
        this.figures = figures;
        this.signedIn = signedIn;
        this.takenBack = takenBack;
        addClassName("bench-undo");
        getElement().setAttribute("aria-live", "polite");
    }

    void show() {
        removeAll();
        List<Tick> ticks = bench.undoable().stream().limit(MOST).toList();
        ticks.forEach(tick -> add(line(tick)));
        setVisible(!ticks.isEmpty());
    }

    private Div line(Tick tick) {
        String number = orders.get(tick.order()).number();
        String stage = getTranslation(tick.stage().textKey());
        Span words = new Span(getTranslation("bench.undo.line", number, stage, tick.who(), figures.moment(tick.at())));
        BookButton back = new BookButton(
                getTranslation("bench.undo"),
                () -> Feedback.unlessRefused(figures, "bench.undone", () -> {
                    bench.undo(BookingKey.seen("undo", tick.id()), tick.order(), signedIn.name());
                    takenBack.run();
                }));
        back.setAriaLabel(getTranslation("bench.undo.label", number, stage));
        back.addThemeVariants(ButtonVariant.TERTIARY);
        return new Div(words, back);
    }
}
