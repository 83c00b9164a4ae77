package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.Comparator;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.WeekPlan.Entry;
import puzzleworkshop.planning.schedule.LatenessCost;

/** By which cost the sequence of the week was chosen, what it comes to, and which orders make it up. */
class SequenceCost extends Div {

    private static final int MOST = 8;

    SequenceCost(WeekPlan.Standing standing, LatenessCost cost, Formatter figures) {
        UnorderedList late = new UnorderedList();
        standing.entries().stream()
                .filter(entry -> entry.outlook().cost() > 0)
                .sorted(Comparator.comparingDouble(
                                (Entry entry) -> -entry.outlook().cost())
                        .thenComparing(entry -> entry.order().number()))
                .limit(MOST)
                .map(entry -> line(entry, figures))
                .forEach(late::add);
        Paragraph how = new Paragraph(figures.text(
                "planning.sequence.how", cost.atAll(), cost.perDay(), cost.growth(), cost.started(), cost.paid()));
        Div content = new Div(
                how, late, new Anchor("set-up/what-lateness-costs", getTranslation("planning.sequence.change")));
        content.addClassName("planning-sequence");
        Details details = new Details(
                figures.text("planning.sequence.cost", standing.plan().cost()), content);
        add(details);
    }

    private static ListItem line(Entry entry, Formatter figures) {
        return new ListItem(figures.text(
                "planning.sequence.order",
                entry.order().number(),
                entry.order().customer().name(),
                entry.outlook().lateDays(),
                entry.outlook().cost()));
    }
}
