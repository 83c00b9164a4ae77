package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.function.SerializableSupplier;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import jakarta.annotation.security.PermitAll;
import java.io.ByteArrayInputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.beans.factory.ObjectProvider;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.planning.LatenessWeights;
import puzzleworkshop.planning.Notices;
import puzzleworkshop.planning.TodaysList;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.WeekPlan.Entry;
import puzzleworkshop.planning.calendar.IsoWeek;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.feed.WeekFeed;
import puzzleworkshop.planning.schedule.DueVerdict;
import puzzleworkshop.planning.schedule.Job.Wait;
import puzzleworkshop.runtime.Broadcaster;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.ui.SetupChecklist;

/** The home of the workshop: what is due, whether it can be done, what gives when it cannot. */
@Route("")
@Menu(title = "planning.week", order = 10)
@PermitAll
@StyleSheet("context://planning.css")
public class ThisWeekView extends Div implements HasDynamicTitle {

    private static final int WORKING_DAYS = 6;

    private enum Arranged {
        BY_WORK,
        BY_PROMISE
    }

    private final transient WeekPlan plan;
    private final transient LatenessWeights weights;
    private final transient WorkingTimes times;
    private final transient Notices notices;
    private final transient WeekFeed feed;
    private final transient TodaysList list;
    private final transient Workshop workshop;
    private final transient SignedIn signedIn;
    private final transient Broadcaster broadcaster;
    private transient Broadcaster.Listening live;
    private final transient Formatter figures;
    private final transient ObjectProvider<SetupChecklist> firstThings;
    private final transient List<WeekSection> sections;
    private final Select<Arranged> arranged = new Select<>();
    private final Div content = new Div();

    public ThisWeekView(
            WeekPlan plan,
            LatenessWeights weights,
            WorkingTimes times,
            Notices notices,
            WeekFeed feed,
            TodaysList list,
            Workshop workshop,
            SignedIn signedIn,
            Broadcaster broadcaster,
            Formatter figures,
            ObjectProvider<SetupChecklist> firstThings,
            List<WeekSection> sections) {
        this.plan = plan;
        this.weights = weights;
        this.times = times;
        this.notices = notices;
        this.feed = feed;
        this.list = list;
        this.workshop = workshop;
        this.signedIn = signedIn;
        this.broadcaster = broadcaster;
        this.figures = figures;
        this.firstThings = firstThings;
        this.sections = sections.stream()
                .sorted(Comparator.comparingInt(WeekSection::place))
                .toList();
        addClassNames("pw-page", "planning-week");
        arranged.setItems(Arranged.values());
        arranged.setItemLabelGenerator(choice -> getTranslation("planning.arranged." + choice.name()));
        arranged.setAriaLabel(getTranslation("planning.arranged"));
        arranged.setValue(Arranged.BY_WORK);
        arranged.addValueChangeListener(e -> show(UI.getCurrent()));
        content.addClassName("planning-content");
        add(head(), content);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("planning.week");
    }

    @Override
    protected void onAttach(AttachEvent event) {
        UI ui = event.getUI();
        show(ui);
        live = UiPush.refresh(
                this,
                broadcaster,
                change -> WeekPlan.restsOn(change) || sections.stream().anyMatch(s -> s.restsOn(change)),
                () -> show(ui));
    }

    private Component head() {
        IsoWeek week = IsoWeek.of(plan.today());
        Anchor today = paper(list::pdf, "today.pdf", getTranslation("planning.list"));
        LocalDate next = list.nextDay();
        Anchor tomorrow =
                paper(() -> list.pdf(next), next + ".pdf", getTranslation("planning.list.next", figures.day(next)));
        Button calendar = new Button(
                getTranslation("planning.feed"), e -> new FeedDialog(feed, workshop, signedIn.name()).open());
        calendar.addThemeVariants(ButtonVariant.TERTIARY);
        Div actions = new Div(arranged, today, tomorrow, calendar);
        actions.addClassNames("pw-push", "pw-row", "planning-actions");
        PageHead head = new PageHead(getTranslation("planning.week.title", week.week()), actions);
        return head;
    }

    private static Anchor paper(SerializableSupplier<byte[]> made, String name, String words) {
        Anchor link = new Anchor(
                DownloadHandler.fromInputStream(event -> {
                    byte[] pdf = made.get();
                    return new DownloadResponse(new ByteArrayInputStream(pdf), name, "application/pdf", pdf.length);
                }),
                words);
        link.getElement().setAttribute("download", false);
        link.setTarget("_blank");
        link.addClassName("planning-link");
        return link;
    }

    private void show(UI ui) {
        if (live != null) {
            live.seen();
        }
        content.removeAll();
        sections.forEach(section -> section.show().ifPresent(content::add));
        WeekPlan.Standing standing = plan.now();
        List<LocalDate> days = workingDays(standing);
        if (standing.entries().isEmpty()) {
            SetupChecklist first = firstThings.getObject();
            if (first.open()) {
                content.add(first);
                return;
            }
            EmptyState empty = new EmptyState(
                    getTranslation("planning.empty"),
                    getTranslation("planning.empty.next"),
                    new Anchor("orders/new", getTranslation("planning.empty.do")));
            content.add(empty);
            return;
        }
        content.add(waiting(standing), new LoadBars(standing.plan(), days, figures));
        if (standing.plan().late() > 0) {
            content.add(new ReliefPanel(plan, standing, times, notices, signedIn, figures, ui));
        }
        content.add(columns(standing, days), new SequenceCost(standing, weights.cost(), figures));
    }

    private static List<LocalDate> workingDays(WeekPlan.Standing standing) {
        List<LocalDate> days = new ArrayList<>();
        for (LocalDate day = standing.today();
                days.size() < WORKING_DAYS && day.isBefore(standing.today().plusDays(28));
                day = day.plusDays(1)) {
            if (standing.calendar().isWorkingDay(day)) {
                days.add(day);
            }
        }
        return days.isEmpty() ? List.of(standing.today()) : days;
    }

    private Component waiting(WeekPlan.Standing standing) {
        Map<Wait.For, Integer> waits = new EnumMap<>(Wait.For.class);
        int toPrint = 0;
        int late = 0;
        int tight = 0;
        for (Entry entry : standing.entries()) {
            DueVerdict verdict = entry.outlook().verdict();
            entry.outlook().waitsFor().ifPresent(wait -> waits.merge(wait.forWhat(), 1, Integer::sum));
            if (verdict != DueVerdict.WAITING && entry.order().next().equals(Optional.of(Stage.PRINT))) {
                toPrint++;
            }
            late += verdict == DueVerdict.LATE ? 1 : 0;
            tight += verdict == DueVerdict.TIGHT ? 1 : 0;
        }
        List<Markup> line = new ArrayList<>();
        count(line, "planning.count.open", standing.entries().size());
        count(line, "planning.count.late", late);
        count(line, "planning.count.tight", tight);
        count(line, "planning.count.print", toPrint);
        if (!waits.isEmpty()) {
            String words = waits.entrySet().stream()
                    .map(e -> getTranslation("planning.count." + e.getKey().name(), e.getValue()))
                    .collect(Collectors.joining(", "));
            line.add(Markup.div("", Verdict.of(Verdict.Kind.WAIT, getTranslation("planning.count.waiting", words))));
        }
        return new Still(Markup.div("planning-counts", line));
    }

    private void count(List<Markup> line, String key, int number) {
        if (number > 0) {
            line.add(Markup.of(
                    "span",
                    "planning-count",
                    Markup.span("planning-count-number", Integer.toString(number)),
                    Markup.span(getTranslation(key, number))));
        }
    }

    private Component columns(WeekPlan.Standing standing, List<LocalDate> days) {
        List<Entry> overdue = new ArrayList<>();
        List<Entry> later = new ArrayList<>();
        List<List<Entry>> byDay = new ArrayList<>();
        days.forEach(day -> byDay.add(new ArrayList<>()));
        for (Entry entry : standing.entries()) {
            Optional<LocalDate> promised = entry.order().promised();
            if (promised.isPresent() && promised.get().isBefore(standing.today()) && !entry.toBeCollected()) {
                overdue.add(entry);
                continue;
            }
            Optional<LocalDate> day =
                    arranged.getValue() == Arranged.BY_WORK ? entry.outlook().mainDay() : promised;
            int column = day.map(d -> columnOf(d, days)).orElse(-1);
            (column < 0 ? later : byDay.get(column)).add(entry);
        }
        List<WeekBoard.Column> columns = new ArrayList<>();
        if (!overdue.isEmpty()) {
            columns.add(column(getTranslation("planning.overdue"), overdue, Optional.empty()));
        }
        for (int i = 0; i < days.size(); i++) {
            String title = days.get(i).equals(standing.today())
                    ? getTranslation("planning.today", figures.day(days.get(i)))
                    : figures.day(days.get(i));
            columns.add(column(title, byDay.get(i), Optional.of(days.get(i))));
        }
        if (!later.isEmpty()) {
            columns.add(column(getTranslation("planning.later"), later, Optional.empty()));
        }
        return new WeekBoard(
                columns,
                figures,
                order -> standing.of(order).ifPresent(entry -> chooseDay(entry, days)),
                (order, day) -> pin(order, Optional.of(day)));
    }

    /** A free day counts to the working day before it; -1 after the last. */
    private static int columnOf(LocalDate day, List<LocalDate> days) {
        if (day.isAfter(days.getLast())) {
            return -1;
        }
        int column = 0;
        for (int i = 0; i < days.size(); i++) {
            column = days.get(i).isAfter(day) ? column : i;
        }
        return column;
    }

    private WeekBoard.Column column(String title, List<Entry> entries, Optional<LocalDate> day) {
        List<Entry> sorted = entries.stream()
                .sorted(Comparator.comparing((Entry e) -> e.order().promised().orElse(LocalDate.MAX))
                        .thenComparing(e -> e.outlook().finish())
                        .thenComparing(e -> e.order().id().value()))
                .toList();
        return new WeekBoard.Column(title, sorted, day.filter(d -> arranged.getValue() == Arranged.BY_WORK));
    }

    private void chooseDay(Entry entry, List<LocalDate> days) {
        new DayDialog(entry, days, figures, day -> pin(entry.order().id(), day)).open();
    }

    private void pin(OrderId order, Optional<LocalDate> day) {
        Feedback.unlessRefused(figures, day.isPresent() ? "planning.pinned" : "planning.unpinned", () -> {
            if (day.isPresent()) {
                plan.pin(order, day.get(), signedIn.name());
            } else {
                plan.unpin(order, signedIn.name());
            }
        });
        show(UI.getCurrent());
    }
}
