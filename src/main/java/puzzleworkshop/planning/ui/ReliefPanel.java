package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.component.progressbar.ProgressBar;
import java.util.stream.Collectors;
import puzzleworkshop.display.Figures;
import puzzleworkshop.display.Saved;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.orders.OrderId;
import puzzleworkshop.planning.Relief;
import puzzleworkshop.planning.Schedule;
import puzzleworkshop.planning.Schedule.Outlook;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.WorkingTimes;

/** What gives when not everything can be on time: whom to warn, or which evening to work, with numbers. */
class ReliefPanel extends Div {

    private final transient Figures figures;
    private final transient WorkingTimes times;

    /** Works the answer out beside the screen; until then it says that it does. */
    ReliefPanel(WeekPlan plan, WeekPlan.Standing standing, WorkingTimes times, Figures figures, UI ui) {
        this.figures = figures;
        this.times = times;
        addClassNames("pw-section", "planning-relief");
        ProgressBar progress = new ProgressBar();
        progress.setIndeterminate(true);
        add(new H2(getTranslation("planning.relief")), new Paragraph(getTranslation("planning.relief.working")), progress);
        Thread.startVirtualThread(() -> {
            var relief = plan.relief();
            ui.access(() -> relief.ifPresentOrElse(found -> show(found, standing), () -> setVisible(false)));
        });
    }

    private void show(Relief relief, WeekPlan.Standing standing) {
        removeAll();
        add(new H2(getTranslation("planning.relief")));
        if (relief.shortMinutes() > 0) {
            add(new Paragraph(getTranslation(
                    "planning.relief.short",
                    getTranslation("planning.resource." + relief.narrow().name()),
                    figures.minutes(Minutes.of(relief.neededMinutes())),
                    figures.day(relief.until().toLocalDate()),
                    figures.minutes(Minutes.of(relief.availableMinutes())),
                    figures.minutes(Minutes.of(relief.shortMinutes())))));
        }
        Div warn = new Div(new H3(getTranslation("planning.relief.warn", relief.warn().size())));
        UnorderedList late = new UnorderedList();
        relief.warn().forEach(outlook -> standing.of(new OrderId(outlook.job())).ifPresent(e -> late.add(line(outlook, e, standing))));
        warn.add(late);
        if (relief.fewestLate() > 0) {
            Paragraph least = new Paragraph(getTranslation("planning.relief.fewest", relief.fewestLate()));
            least.addClassName("pw-small");
            warn.add(least);
        }
        Div work = new Div(new H3(getTranslation("planning.relief.evening")));
        if (relief.evenings().isEmpty()) {
            work.add(new Paragraph(getTranslation("planning.relief.no-evening")));
        }
        UnorderedList ways = new UnorderedList();
        relief.evenings().forEach(longer -> ways.add(line(longer, relief.warn().size())));
        work.add(ways);
        Div both = new Div(warn, work);
        both.addClassName("planning-relief-both");
        add(both);
    }

    private ListItem line(Outlook outlook, WeekPlan.Entry entry, WeekPlan.Standing standing) {
        Anchor link = new Anchor("orders/" + entry.order().number(), entry.order().customer().name());
        String day = outlook.finish().equals(Schedule.NEVER)
                ? getTranslation("planning.relief.never")
                : getTranslation(
                        "planning.relief.instead",
                        entry.order().promised().map(figures::day).orElse(""),
                        figures.day(entry.way().arrives(
                                entry.way()
                                        .leaves(outlook.finish(), standing.calendar().holidays())
                                        .toLocalDate(),
                                standing.calendar().holidays())));
        return new ListItem(link, new Span(" " + entry.order().number() + ": " + day));
    }

    private ListItem line(Relief.Longer longer, int lateNow) {
        String when = longer.evenings().stream()
                .map(e -> getTranslation("planning.relief.when", e.person(), figures.day(e.day()), e.span().toString()))
                .collect(Collectors.joining(", "));
        Span words = new Span(getTranslation(
                longer.lateAfter() == 0 ? "planning.relief.all" : "planning.relief.some",
                when,
                figures.minutes(Minutes.of(longer.minutes())),
                longer.lateAfter(),
                lateNow));
        Button agree = new Button(getTranslation("planning.relief.agree"), e -> Saved.unlessRefused(
                figures, "planning.relief.agreed", () -> longer.evenings().forEach(times::agree)));
        agree.addThemeVariants(ButtonVariant.SMALL);
        ListItem item = new ListItem(words, agree);
        item.addClassName("planning-relief-way");
        return item;
    }
}
