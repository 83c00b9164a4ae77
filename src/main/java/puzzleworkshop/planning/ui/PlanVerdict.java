package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.planning.schedule.Schedule.Outlook;

/** What the plan says about an order: the verdict, and beside it why. */
@StyleSheet("context://planning.css")
public class PlanVerdict extends Div {

    public PlanVerdict(Outlook outlook, Formatter figures) {
        addClassName("planning-verdict");
        Span cause = new Span(figures.say(outlook.cause()));
        cause.addClassName("pw-small");
        add(
                new Verdict(
                        kind(outlook),
                        figures.text("planning.verdict." + outlook.verdict().name(), outlook.lateDays())),
                cause);
    }

    private static Verdict.Kind kind(Outlook outlook) {
        return switch (outlook.verdict()) {
            case ON_TIME -> Verdict.Kind.GOOD;
            case TIGHT -> Verdict.Kind.WARN;
            case LATE -> Verdict.Kind.BAD;
            case WAITING -> Verdict.Kind.WAIT;
        };
    }
}
