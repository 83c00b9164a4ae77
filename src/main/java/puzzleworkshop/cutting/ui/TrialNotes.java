package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutting.settings.NextTry;
import puzzleworkshop.cutting.trials.PlannedTrial;
import puzzleworkshop.cutting.trials.PlannedTrials;
import puzzleworkshop.cutting.ui.settings.BoardNames;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.OrderId;

/** Trials that orders wait for, as the bench, the machines' page and an order's page show them. */
@org.springframework.stereotype.Component
public class TrialNotes {

    private final PlannedTrials planned;
    private final BoardNames boards;
    private final Formatter figures;

    TrialNotes(PlannedTrials planned, BoardNames boards, Formatter figures) {
        this.planned = planned;
        this.boards = boards;
        this.figures = figures;
    }

    /** Everything that is still to be tried; empty when nothing is. */
    public Optional<Component> all() {
        return under(planned.open());
    }

    /** The trial an order waits for. */
    public Optional<Component> of(OrderId order) {
        return under(planned.openFor(order).stream().toList());
    }

    private Optional<Component> under(List<PlannedTrial> trials) {
        if (trials.isEmpty()) {
            return Optional.empty();
        }
        Box section = new Box();
        section.add(new H3(figures.text("cutting.planned", trials.size())));
        trials.forEach(trial -> section.add(line(trial)));
        return Optional.of(section);
    }

    /** Brings its look along to whatever screen shows it. */
    @StyleSheet("context://cutting.css")
    private static final class Box extends Div {
        Box() {
            addClassNames("pw-section", "cutting-planned");
        }
    }

    private Div line(PlannedTrial trial) {
        Span order = new Span(figures.text(
                "cutting.planned.for",
                String.join(", ", trial.labels()),
                trial.setting().machine().name()));
        order.addClassName("pw-small");
        Anchor board = new Anchor(
                "machines/settings/" + trial.setting().id(),
                boards.of(trial.setting().board()));
        Div head = new Div(
                new Verdict(
                        Verdict.Kind.WARN, figures.text(trial.setting().state().textKey())),
                board,
                order);
        head.addClassName("cutting-trial-first");
        Div line = new Div(head);
        line.addClassName("cutting-trial");
        trial.next().ifPresent(next -> line.add(first(next)));
        return line;
    }

    private Paragraph first(NextTry next) {
        SmallText words = new SmallText(figures.text(
                "cutting.planned.try",
                figures.number(next.parameters().speed().toMmPerMinute(), 0),
                next.parameters().power(),
                next.parameters().passes(),
                figures.say(next.reason())));
        return words;
    }
}
