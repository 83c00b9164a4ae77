package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.component.progressbar.ProgressBar;
import java.util.List;
import java.util.stream.Collectors;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.planning.Notices;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.schedule.OverloadAdvice;
import puzzleworkshop.workshop.SignedIn;

/** What gives when not everything can be on time: whom to warn, or which evening to work, with numbers. */
class ReliefPanel extends Div {

    private static final int FIRST = 12;

    private final transient Formatter figures;
    private final transient WorkingTimes times;
    private final transient WeekPlan plan;
    private final transient Notices notices;
    private final transient SignedIn signedIn;

    /** Works the answer out beside the screen; until then it says that it does. */
    ReliefPanel(
            WeekPlan plan,
            WeekPlan.Standing standing,
            WorkingTimes times,
            Notices notices,
            SignedIn signedIn,
            Formatter figures,
            UI ui) {
        this.plan = plan;
        this.notices = notices;
        this.signedIn = signedIn;
        this.figures = figures;
        this.times = times;
        addClassNames("pw-section", "planning-relief");
        ProgressBar progress = new WorkingBar();
        progress.setIndeterminate(true);
        add(title(), new Paragraph(getTranslation("planning.relief.working")), progress);
        UiPush.beside("relief", () -> {
            var relief = plan.relief();
            UiPush.tell(ui, () -> relief.ifPresentOrElse(found -> show(found, standing), () -> setVisible(false)));
        });
    }

    private H2 title() {
        H2 title = new H2(getTranslation("planning.relief"));
        title.addClassName("planning-relief-title");
        title.addComponentAsFirst(SvgBox.inline("<svg viewBox='0 0 16 16' aria-hidden='true'><path d='M8 2L15 14H1Z'"
                + " fill='none' stroke='currentColor' stroke-width='1.6' stroke-linejoin='round'/><path d='M8 6.5v3.5M8"
                + " 11.4v1.2' stroke='currentColor' stroke-width='1.6'/></svg>"));
        return title;
    }

    private void show(OverloadAdvice relief, WeekPlan.Standing standing) {
        removeAll();
        add(title());
        if (relief.shortMinutes() > 0) {
            add(new Paragraph(getTranslation(
                    "planning.relief.short",
                    getTranslation("planning.resource." + relief.narrow().name()),
                    figures.minutes(Minutes.of(relief.neededMinutes())),
                    figures.day(relief.until().toLocalDate()),
                    figures.minutes(Minutes.of(relief.availableMinutes())),
                    figures.minutes(Minutes.of(relief.shortMinutes())))));
        }
        Div warn = new Div(
                new H3(getTranslation("planning.relief.warn", relief.warn().size())));
        late(
                warn,
                relief.warn().stream()
                        .flatMap(outlook -> standing.of(new OrderId(outlook.job())).stream())
                        .toList());
        if (relief.costByDate() > relief.cost() + 0.05) {
            warn.add(new Paragraph(
                    figures.text("planning.relief.by-date", relief.lateByDate(), relief.costByDate(), relief.cost())));
        }
        if (relief.fewestLate() > 0) {
            SmallText least = new SmallText(getTranslation("planning.relief.fewest", relief.fewestLate()));
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

    /** Of many the first; the others follow on a press, which leads on to the first of them. */
    private void late(Div warn, List<WeekPlan.Entry> entries) {
        UnorderedList late = new UnorderedList();
        entries.stream().limit(FIRST).map(this::line).forEach(late::add);
        warn.add(late);
        if (entries.size() > FIRST) {
            Button others = new Button(getTranslation("planning.relief.others", entries.size() - FIRST));
            others.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
            others.addClickListener(press -> {
                List<ListItem> more =
                        entries.stream().skip(FIRST).map(this::line).toList();
                more.forEach(late::add);
                warn.remove(others);
                more.getFirst()
                        .getChildren()
                        .filter(Button.class::isInstance)
                        .findFirst()
                        .ifPresent(tell -> ((Button) tell).focus());
            });
            warn.add(others);
        }
    }

    private ListItem line(WeekPlan.Entry entry) {
        String day = plan.reaches(entry)
                .map(reaches -> getTranslation(
                        "planning.relief.instead",
                        entry.order().promised().map(figures::day).orElse(""),
                        figures.day(reaches)))
                .orElse(getTranslation("planning.relief.never"));
        Button tell = new Button(
                getTranslation("planning.relief.tell"),
                e -> new TellDialog(entry, notices, figures, signedIn.name(), () -> {}).open());
        tell.addThemeVariants(ButtonVariant.SMALL);
        tell.setAriaLabel(getTranslation(
                "planning.relief.tell.label", entry.order().customer().name()));
        Still words = new Still(Markup.div(
                "",
                Markup.link(
                        "orders/" + entry.order().number(),
                        entry.order().customer().name()),
                Markup.words(" " + entry.order().number() + ": " + day)));
        ListItem item = new ListItem(words, tell);
        item.addClassName("planning-relief-way");
        return item;
    }

    private ListItem line(OverloadAdvice.Longer longer, int lateNow) {
        String when = longer.evenings().stream()
                .map(e -> getTranslation(
                        "planning.relief.when",
                        e.person(),
                        figures.day(e.day()),
                        e.span().toString()))
                .collect(Collectors.joining(", "));
        Span words = new Span(getTranslation(
                longer.lateAfter() == 0 ? "planning.relief.all" : "planning.relief.some",
                when,
                figures.minutes(Minutes.of(longer.minutes())),
                longer.lateAfter(),
                lateNow));
        Button agree = new Button(
                getTranslation("planning.relief.agree"),
                e -> Feedback.unlessRefused(
                        figures,
                        "planning.relief.agreed",
                        () -> longer.evenings().forEach(times::agree)));
        agree.addThemeVariants(ButtonVariant.SMALL);
        ListItem item = new ListItem(words, agree);
        item.addClassName("planning-relief-way");
        return item;
    }
}
