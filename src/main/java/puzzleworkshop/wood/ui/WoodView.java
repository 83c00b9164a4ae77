package puzzleworkshop.wood.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.RolesAllowed;
import java.time.Duration;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.LatestAnswer;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.wood.BoardsOnTheWay;
import puzzleworkshop.wood.BuyAdvice;
import puzzleworkshop.wood.Dealers;
import puzzleworkshop.wood.KeepAdvice;
import puzzleworkshop.wood.MonthOfWood;
import puzzleworkshop.wood.Replay;
import puzzleworkshop.wood.WoodAdvice;
import puzzleworkshop.wood.YearAgain;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** Wood month by month, which boards to order, which pieces to give away, and what thinking ahead would have saved. */
@Route("wood")
@Menu(title = "wood.title", order = 45)
@RolesAllowed("OWNER")
@StyleSheet("context://wood.css")
public class WoodView extends Div implements HasDynamicTitle {

    private static final int MOST_SPARE = 50;

    private final transient WoodAdvice advice;
    private final transient Formatter figures;
    private final transient LocalDate today;
    private final Div keep = section();
    private final Div buy = section();
    private final transient LatestAnswer<List<BuyAdvice>> boardsToBuy = new LatestAnswer<>(Duration.ZERO);
    private final transient LatestAnswer<KeepAdvice> piecesToGo = new LatestAnswer<>(Duration.ZERO);
    private final transient LatestAnswer<Optional<Replay>> years = new LatestAnswer<>(Duration.ZERO);
    private final transient BoardsOnTheWay onTheWay;
    private final transient SignedIn who;
    private final OnTheWayList ordered;

    public WoodView(
            WoodAdvice advice,
            YearAgain again,
            Dealers dealers,
            BoardsOnTheWay onTheWay,
            Workshop workshop,
            SignedIn who,
            Formatter figures) {
        this.advice = advice;
        this.onTheWay = onTheWay;
        this.who = who;
        this.today = workshop.today();
        this.figures = figures;
        addClassName("pw-page");
        PageHead head = new PageHead(
                getTranslation("wood.title"),
                new Paragraph(getTranslation("wood.lead")),
                new Anchor("asked-for", getTranslation("wood.asked.title")));
        ordered = new OnTheWayList(onTheWay, who, figures, this::refresh);
        add(head, months(advice.months()), buy, ordered, keep, replay(again));
        refresh();
        add(new WoodRulesForm(advice, figures, this::refresh), new DealersForm(dealers, figures, this::refresh));
    }

    @Override
    public String getPageTitle() {
        return getTranslation("wood.title");
    }

    private void refresh() {
        think(piecesToGo, keep, "wood.keep", "wood.keep.thinking", advice::keep, this::showKeep);
        think(boardsToBuy, buy, "wood.buy", "wood.buy.thinking", advice::buy, this::showBuy);
    }

    private Div months(List<MonthOfWood> months) {
        Div section = section();
        section.add(new H2(getTranslation("wood.months")));
        if (months.isEmpty()) {
            section.add(new Paragraph(getTranslation("wood.months.none")));
            return section;
        }
        Div table = new Div();
        table.addClassName("wood-months");
        // wider than a phone: it goes sideways by keys too
        table.getElement().setAttribute("tabindex", "0");
        for (String head : List.of("month", "bought", "cost", "used", "kept", "thrown", "yield")) {
            Span cell = new Span(getTranslation("wood." + head));
            cell.addClassName("wood-head");
            table.add(cell);
        }
        for (MonthOfWood month : months.reversed()) {
            table.add(
                    new Span(month.month().getMonth().getDisplayName(TextStyle.SHORT_STANDALONE, Locale.ENGLISH) + " "
                            + month.month().getYear()),
                    number(figures.largeArea(month.bought())),
                    number(figures.money(month.cost())),
                    number(figures.largeArea(month.used())),
                    number(figures.largeArea(month.kept())),
                    number(figures.largeArea(month.thrown())),
                    number(
                            month.yield().isPresent()
                                    ? figures.number(100 * month.yield().getAsDouble(), 0) + " %"
                                    : "–"));
        }
        section.add(table);
        return section;
    }

    private void showBuy(List<BuyAdvice> kinds) {
        if (kinds.isEmpty()) {
            buy.add(new Paragraph(getTranslation("wood.buy.none")));
        }
        for (BuyAdvice kind : kinds) {
            Div block = new Div();
            block.addClassName("wood-kind");
            Span name =
                    new Span(kind.material() + ", " + figures.length(kind.kind().thickness()));
            name.addClassName("wood-strong");
            block.add(name);
            if (!kind.possible()) {
                block.add(new Paragraph(getTranslation("wood.buy.impossible")));
            } else if (!kind.isDue()) {
                block.add(new Paragraph(figures.text("wood.buy.enough", kind.without())));
            } else {
                block.add(new Paragraph(figures.text("wood.buy.order", kind.cost(), kind.service(), kind.without())));
            }
            if (kind.tooLarge() > 0) {
                block.add(new Paragraph(figures.text("wood.buy.too-large", kind.tooLarge())));
            }
            if (kind.waiting() > 0 || kind.onTheWay() > 0) {
                block.add(new Paragraph(figures.text("wood.buy.counted", kind.waiting(), kind.onTheWay())));
            }
            kind.orderBy()
                    .filter(day -> kind.isDue() || day.isAfter(today))
                    .map(day -> new Paragraph(
                            day.isAfter(today)
                                    ? figures.text("wood.buy.by", figures.day(day))
                                    : getTranslation("wood.buy.now")))
                    .ifPresent(block::add);
            kind.lines().forEach(line -> block.add(row(line)));
            buy.add(block);
        }
    }

    private Div row(BuyAdvice.Line line) {
        String name = name(figures, line);
        String what = line.count() > 0
                ? figures.text("wood.buy.line", line.count(), name, line.price())
                : figures.text("wood.buy.not", name, line.price());
        String limit = line.breakEven()
                .map(price -> figures.text(line.count() > 0 ? "wood.buy.until" : "wood.buy.from", price))
                .orElse("");
        Div row = new Div(new Span(what), soft(figures.text("wood.buy.comes", line.weeks())), soft(limit));
        row.addClassName("wood-line");
        if (line.count() == 0) {
            return row;
        }
        Div due = new Div(row, new OrderedForm(onTheWay, line, who, figures, () -> {
            ordered.refresh();
            refresh();
        }));
        due.addClassName("wood-due");
        return due;
    }

    /** The board, or the piece that its dealer cuts from it. */
    static String name(Formatter figures, BuyAdvice.Line line) {
        return line.cutTo()
                .map(size -> figures.text("wood.buy.cut", size, line.board().name()))
                .orElse(line.board().name());
    }

    private void showKeep(KeepAdvice advised) {
        if (advised.spare().isEmpty()) {
            keep.add(new Paragraph(figures.text("wood.keep.enough", advised.pieces(), advised.room())));
            return;
        }
        keep.add(new Paragraph(figures.text(
                "wood.keep.text",
                advised.pieces(),
                advised.room(),
                advised.spare().size())));
        advised.spare().stream().limit(MOST_SPARE).forEach(spare -> {
            Div row = new Div(
                    new Anchor(
                            "sheets/number/" + spare.sheet().id(),
                            spare.sheet().id().toString()),
                    soft(spare.sheet().facts().place()),
                    new Span(figures.say(spare.why())));
            row.addClassName("wood-line");
            keep.add(row);
        });
    }

    private Div replay(YearAgain again) {
        Div section = new PageSection(getTranslation("wood.replay"), new Paragraph(getTranslation("wood.replay.text")));
        Div answer = new Div();
        Button start = new Button(getTranslation("wood.replay.start"));
        start.setDisableOnClick(true);
        start.addClickListener(event -> think(years, answer, "", "wood.replay.thinking", again::replay, found -> {
            found.ifPresentOrElse(
                    replay -> answer.add(new ReplaySaid(replay, figures)),
                    () -> answer.add(new Paragraph(getTranslation("wood.replay.none"))));
            start.setEnabled(true);
        }));
        section.add(start, answer);
        return section;
    }

    /** Works off the screen's thread; the place shows that it does, then what came of it. Only the latest question is answered. */
    private <T> void think(
            LatestAnswer<T> latest, Div place, String heading, String words, Supplier<T> work, Consumer<T> show) {
        ProgressBar bar = new WorkingBar();
        bar.setIndeterminate(true);
        place.removeAll();
        if (!heading.isEmpty()) {
            place.add(new H2(getTranslation(heading)));
        }
        Paragraph wait = new Paragraph(getTranslation(words));
        place.add(wait, bar);
        latest.ask(
                outdated -> work.get(),
                found -> {
                    place.remove(wait, bar);
                    show.accept(found);
                },
                failed -> {
                    place.remove(wait, bar);
                    place.add(new Paragraph(getTranslation("wood.failed")));
                });
    }

    private static Div section() {
        Div section = new Div();
        section.addClassName("pw-section");
        return section;
    }

    private static Component number(String text) {
        Span span = new Span(text);
        span.addClassName("pw-number");
        return span;
    }

    private static Span soft(String text) {
        Span span = new Span(text);
        span.addClassName("pw-small");
        return span;
    }
}
