package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.planning.schedule.Schedule.Outlook;

/** What the plan says about an order: the verdict, and beside it why. */
@StyleSheet("context://planning.css")
public class PlanVerdict extends Still {

    public PlanVerdict(Outlook outlook, Formatter figures) {
        super(of(outlook, figures));
    }

    /**
     * The same within what only stands there; no component is made, so who shows it brings the style sheet.
     *
     * @param more that stands below
     */
    public static Markup of(Outlook outlook, Formatter figures, Markup... more) {
        List<Markup> parts = new ArrayList<>();
        parts.add(Verdict.of(
                kind(outlook),
                figures.text("planning.verdict." + outlook.verdict().name(), outlook.lateDays())));
        parts.add(Markup.span("pw-small", figures.say(outlook.cause())));
        parts.addAll(List.of(more));
        return Markup.div("planning-verdict", parts);
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
