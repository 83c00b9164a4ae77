package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Supplier;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.ui.fields.FieldError;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.ReadyDay;

/** The earliest day that keeps everybody's promise, the day with rush, and the day that is promised. */
public class ReadyPane extends Div {

    private final transient Formatter figures;
    private final transient Supplier<LocalDate> today;
    private final FieldError none;
    private final Paragraph earliest = new Paragraph();
    private final SmallText journey = new SmallText("");
    private final Checkbox rush = new Checkbox(getTranslation("offers.new.rush"));
    private final DayField promised = new DayField(getTranslation("orders.fact.promised"));
    private final Div verdict = new Div();
    private final Div day = new Div();
    private boolean ownChoice;

    ReadyPane(Formatter figures, Supplier<LocalDate> today, Runnable changed) {
        this.figures = figures;
        this.today = today;
        addClassName("pw-section");
        none = new FieldError(Offer.Question.READY, figures);
        rush.addValueChangeListener(event -> {
            if (event.isFromClient()) {
                ownChoice = false;
                changed.run();
            }
        });
        promised.setId("promised");
        promised.notBefore(today.get());
        promised.addValueChangeListener(event -> {
            if (event.isFromClient()) {
                ownChoice = true;
                changed.run();
            }
        });
        day.addClassName("neworder-day");
        Div row = new Div(promised, rush);
        row.addClassName("pw-row");
        add(new H2(getTranslation("offers.new.ready")), none, earliest, journey, row, verdict);
    }

    /** The promised day, for the foot of the page. */
    Div day() {
        return day;
    }

    void take(Order order) {
        rush.setValue(order.rush());
        promised.setValue(order.promised().orElse(null));
        ownChoice = order.promised().isPresent();
    }

    boolean rush() {
        return rush.getValue();
    }

    /** Whether the day can be read and lies ahead; the field itself says what is wrong. The page may stand over midnight. */
    boolean dayFits() {
        promised.notBefore(today.get());
        return promised.isFit();
    }

    /** Another day than the one typed, chosen by a person where the page asked. */
    void promise(LocalDate chosen) {
        ownChoice = true;
        promised.setValue(chosen);
    }

    /** Never a day that has passed. */
    public Optional<LocalDate> promised() {
        return Optional.ofNullable(promised.getValue()).filter(chosen -> dayFits());
    }

    /** A day that was proposed goes with the answer that proposed it; one that a person chose stays in its field. */
    void clearAnswer() {
        none.say("");
        forget();
    }

    private void forget() {
        earliest.setVisible(false);
        journey.setVisible(false);
        verdict.removeAll();
        rush.setLabel(getTranslation("offers.new.rush"));
        if (!ownChoice) {
            promised.clear();
        }
        showDay(Optional.empty());
    }

    /** What can be read but not made has no day either. */
    void show(Offer offer) {
        none.show(offer);
        if (offer.ready().isEmpty()) {
            forget();
            return;
        }
        ReadyDay forecast = offer.ready().get();
        earliest.setVisible(true);
        journey.setVisible(true);
        verdict.removeAll();
        show(forecast, offer);
        showDay(promised());
        promised().map(forecast::harmedBy).filter(harmed -> !harmed.isEmpty()).ifPresent(harmed -> {
            Span warning = new Span(
                    getTranslation("offers.new.harm.foot", harmed.getFirst().order(), harmed.size() - 1));
            warning.addClassName("pw-small");
            day.add(warning);
        });
    }

    private void showDay(Optional<LocalDate> promised) {
        Span shown = new Span(promised.map(figures::day).orElse("–"));
        shown.addClassName("pw-big-number");
        shown.setId("ready");
        day.removeAll();
        day.add(shown);
    }

    private void show(ReadyDay forecast, Offer offer) {
        earliest.setText(figures.text("offers.new.earliest", forecast.ready(), forecast.cause()));
        journey.setText(figures.say(forecast.journey()));
        rush.setEnabled(forecast.rush().isPresent() || rush.getValue());
        rush.setLabel(forecast.rush()
                .map(hurried -> figures.text("offers.new.rush-day", hurried))
                .orElse(getTranslation("offers.new.rush-no-gain")));
        LocalDate possible = offer.wish().day().rush() ? forecast.rush().orElse(forecast.ready()) : forecast.ready();
        if (!ownChoice) {
            LocalDate wanted = offer.wish().day().wantedBy().orElse(possible);
            promised.setValue(wanted.isAfter(possible) ? wanted : possible);
        }
        if (!dayFits()) {
            return;
        }
        if (promised.getValue() != null && promised.getValue().isBefore(possible)) {
            verdict.add(line(Verdict.Kind.BAD, "offers.new.too-early", possible));
            verdict.add(new HarmList(forecast, promised.getValue()));
        } else if (offer.wish()
                .day()
                .wantedBy()
                .filter(w -> w.isBefore(possible))
                .isPresent()) {
            verdict.add(line(
                    Verdict.Kind.WARN,
                    "offers.new.later-than-wanted",
                    offer.wish().day().wantedBy().get()));
        } else {
            verdict.add(line(Verdict.Kind.GOOD, "offers.new.can-be-kept", possible));
        }
    }

    private Div line(Verdict.Kind kind, String key, LocalDate day) {
        Div line = new Div(new Verdict(kind, getTranslation(key)), new Paragraph(figures.text(key + ".why", day)));
        line.addClassName("pw-verdict-line");
        return line;
    }
}
