package puzzleworkshop.workshop.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.OrderedList;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.spring.annotation.SpringComponent;
import java.util.Comparator;
import java.util.List;
import org.springframework.beans.factory.config.ConfigurableBeanFactory;
import org.springframework.context.annotation.Scope;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Refused;

/** The way from an empty workshop to its first order: what is done, what comes next, what can wait. */
@SpringComponent
@Scope(ConfigurableBeanFactory.SCOPE_PROTOTYPE)
public class SetupChecklist extends Div {

    private final boolean open;

    SetupChecklist(List<SetupStep> things, Formatter figures) {
        addClassNames("pw-section", "pw-first");
        OrderedList list = new OrderedList();
        List<SetupStep> inOrder = things.stream()
                .sorted(Comparator.comparingInt(SetupStep::place))
                .toList();
        // the first that is open is the one to do now
        boolean next = true;
        boolean goalReached = false;
        for (SetupStep thing : inOrder) {
            boolean done;
            try {
                done = thing.done();
            } catch (Refused forOwners) {
                // whoever may not look at it has nothing to do about it
                continue;
            }
            list.add(row(thing, done, !done && next, figures));
            next = next && done;
            goalReached = done;
        }
        open = !next;
        // the last of them is the first order: who has had it is not before it any more
        String heading = goalReached ? "workshop.first.left" : "workshop.first.title";
        String lead = goalReached ? "workshop.first.left.lead" : "workshop.first.lead";
        add(new H2(figures.text(heading)), new Paragraph(figures.text(lead)), list);
    }

    /** Whether something is left to do. */
    public boolean open() {
        return open;
    }

    private static ListItem row(SetupStep thing, boolean done, boolean next, Formatter figures) {
        Span what = new Span(figures.text(thing.key()));
        what.addClassName("pw-first-what");
        SmallText why = new SmallText(figures.text(thing.key() + ".why"));
        Div words = new Div(what, why);
        words.addClassName("pw-grow");
        ListItem row = new ListItem(words);
        if (done) {
            row.add(new Verdict(Verdict.Kind.GOOD, figures.text("workshop.first.done")));
        } else {
            Anchor way = new Anchor(thing.path(), figures.text("workshop.first.do"));
            way.getElement().setAttribute("aria-label", figures.text(thing.key()));
            way.addClassName("pw-first-way");
            row.add(way);
        }
        row.getElement().setAttribute("data-next", next);
        return row;
    }
}
