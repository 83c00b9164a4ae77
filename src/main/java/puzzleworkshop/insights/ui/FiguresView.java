package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.RolesAllowed;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.insights.FinishedOrder;
import puzzleworkshop.insights.Insights;
import puzzleworkshop.insights.PeriodFigures;
import puzzleworkshop.insights.TimeVariance;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.papers.AccountantCsv;
import puzzleworkshop.papers.Debts;
import puzzleworkshop.pricing.rates.RateBook;

/** What the workshop earned: by month, by size, order by order; who owes what; what goes to the accountant. */
@Route("figures")
@Menu(title = "insights.title", order = 80)
@RolesAllowed("OWNER")
@StyleSheet("context://insights.css")
public class FiguresView extends Div implements HasDynamicTitle {

    private static final int MONTHS = 12;

    private final transient Insights insights;
    private final transient Formatter figures;
    private final transient RateBook book;
    private final Div drifts = new Div();

    public FiguresView(
            Insights insights,
            Debts debts,
            AccountantCsv csv,
            RateBook book,
            Formatter figures,
            List<FiguresSection> sections) {
        this.insights = insights;
        this.figures = figures;
        this.book = book;
        addClassName("pw-page");
        PageHead head = new PageHead(
                getTranslation("insights.title"),
                new Paragraph(getTranslation("insights.lead")),
                new Anchor("figures/work", getTranslation("insights.work.title")));
        add(head);
        YearMonth first = insights.thisMonth().minusMonths(MONTHS - 1);
        List<FinishedOrder> finished = insights.finishedSince(first);
        if (finished.isEmpty()) {
            EmptyState empty = new EmptyState(getTranslation("insights.empty"), getTranslation("insights.empty.next"));
            add(empty);
        } else {
            add(months(insights.byMonth(finished, first)), sizes(insights.bySize(finished)), orders(finished));
        }
        drifts.addClassName("pw-section");
        add(drifts, debts(debts.open()), new AccountantSection(csv, book.today()));
        sections.stream()
                .sorted(Comparator.comparingInt(FiguresSection::place))
                .forEach(section -> section.show().ifPresent(this::add));
        showDrifts(first);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("insights.title");
    }

    private Div months(List<PeriodFigures<YearMonth>> months) {
        PeriodFigures<YearMonth> now = months.getLast();
        Div big = new Div(
                big("insights.month.sold", figures.money(now.net())),
                big("insights.month.earned", figures.money(now.earned())),
                big("insights.month.margin", figures.percent(now.margin())),
                big("insights.month.puzzles", Integer.toString(now.puzzles())),
                big("insights.month.hands", figures.minutes(now.hands())),
                big("insights.month.per-hour", figures.money(now.earnedPerHour())));
        big.addClassName("insights-big");
        SvgBox chart = new SvgBox("insights-chart").draw(MonthChart.of(months, figures));
        Div legend = new Div(
                key("insights-bar-net", "insights.legend.sold"), key("insights-bar-earned", "insights.legend.earned"));
        legend.addClassName("insights-legend");
        return section("insights.months", big, chart, new MonthRows(months, figures), legend);
    }

    private Div key(String cssClass, String text) {
        Span swatch = new Span();
        swatch.addClassNames("insights-swatch", cssClass);
        return new Div(swatch, new Span(getTranslation(text)));
    }

    private Div sizes(List<PeriodFigures<Size>> sizes) {
        FigureTable table = new FigureTable("insights-sizes")
                .word("insights.size")
                .figure("insights.puzzles")
                .figure("insights.sold")
                .figure("insights.earned")
                .figure("insights.margin")
                .figure("insights.hands")
                .figure("insights.per-hour")
                .word("insights.verdict");
        Percent floor = book.rule(book.today()).floorMargin();
        for (int i = 0; i < sizes.size(); i++) {
            PeriodFigures<Size> size = sizes.get(i);
            table.row(
                    new Span(figures.size(size.what())),
                    cell(Integer.toString(size.puzzles())),
                    money(size.net()),
                    money(size.earned()),
                    cell(figures.percent(size.margin())),
                    cell(figures.minutes(size.hands())),
                    money(size.earnedPerHour()),
                    verdict(size, i, sizes.size(), floor));
        }
        return section("insights.sizes", table);
    }

    private Span verdict(PeriodFigures<Size> size, int place, int of, Percent floor) {
        if (size.earned().isNegative()) {
            return new Verdict(Verdict.Kind.BAD, getTranslation("insights.loses"));
        }
        if (place == 0 && of > 1) {
            return new Verdict(Verdict.Kind.GOOD, getTranslation("insights.best"));
        }
        boolean under = size.margin().compareTo(floor) < 0;
        if (under) {
            return new Verdict(Verdict.Kind.WARN, getTranslation("insights.under-floor"));
        }
        return place == of - 1 && of > 1
                ? new Verdict(Verdict.Kind.WAIT, getTranslation("insights.least"))
                : new Span();
    }

    private Div orders(List<FinishedOrder> finished) {
        FigureTable table = new FigureTable("insights-orders")
                .word("insights.order")
                .word("insights.customer")
                .figure("insights.price")
                .figure("insights.reckoned")
                .figure("insights.cost")
                .figure("insights.earned")
                .figure("insights.margin");
        return section("insights.orders", new MoreRows<>(table, finished, this::order, figures));
    }

    private Component[] order(FinishedOrder order) {
        String mishap = order.mishaps() > 0 ? getTranslation("insights.mishaps", order.mishaps()) : "";
        return new Component[] {
            new Anchor("orders/" + order.number(), order.number()),
            new Span(order.customer() + mishap),
            money(order.outcome().net()),
            money(order.outcome().reckoned()),
            money(order.outcome().actual()),
            money(order.outcome().earned()),
            cell(figures.percent(order.outcome().margin()))
        };
    }

    private void showDrifts(YearMonth since) {
        drifts.removeAll();
        drifts.add(new H2(getTranslation("insights.drift")), new Paragraph(getTranslation("insights.drift.lead")));
        List<TimeVariance> found = insights.drifts(since);
        if (found.isEmpty()) {
            Paragraph none = new Paragraph(getTranslation("insights.drift.none"));
            none.addClassName("pw-soft");
            drifts.add(none);
        }
        for (TimeVariance drift : found) {
            Span what = new Span(figures.text(
                    "insights.drift.line",
                    Sentence.of(drift.stage().textKey()),
                    drift.ratio() * 100,
                    drift.orders(),
                    drift.standard().perPuzzle().value(),
                    drift.proposed().perPuzzle().value()));
            Button adopt = new Button(getTranslation("insights.drift.adopt"), event -> {
                if (Feedback.unlessRefused(figures, "insights.drift.adopted", () -> insights.adopt(drift))) {
                    showDrifts(since);
                }
            });
            Div row = new Div(what, adopt);
            row.addClassName("insights-drift");
            drifts.add(row);
        }
    }

    private Div debts(List<Debts.Debt> open) {
        if (open.isEmpty()) {
            Paragraph none = new Paragraph(getTranslation("insights.debts.none"));
            none.addClassName("pw-soft");
            return section("insights.debts", none);
        }
        FigureTable table = new FigureTable("insights-debts")
                .word("insights.order")
                .word("insights.customer")
                .figure("insights.due")
                .figure("insights.received")
                .figure("insights.open")
                .word("insights.verdict");
        Money all = Money.sum(
                open.stream().map(Debts.Debt::open).filter(Money::isPositive).toList(),
                open.getFirst().due().currency());
        LocalDate today = book.today();
        return section(
                "insights.debts",
                new Paragraph(figures.text("insights.debts.all", all)),
                new MoreRows<>(table, open, debt -> debt(debt, today), figures));
    }

    private Component[] debt(Debts.Debt debt, LocalDate today) {
        Span verdict = debt.open().isNegative()
                ? new Verdict(Verdict.Kind.WARN, getTranslation("insights.we-owe"))
                : debt.isOverdue(today)
                        ? new Verdict(
                                Verdict.Kind.BAD,
                                figures.text(
                                        "insights.overdue-since", debt.dueOn().orElseThrow()))
                        : new Verdict(
                                Verdict.Kind.WAIT,
                                debt.dueOn()
                                        .map(day -> figures.text("insights.due-by", day))
                                        .orElse(getTranslation("insights.not-invoiced")));
        return new Component[] {
            new Anchor("orders/" + debt.number(), debt.number()),
            new Span(debt.customer()),
            money(debt.due()),
            money(debt.received()),
            money(debt.open()),
            verdict
        };
    }

    private Div section(String key, Component... parts) {
        Div section = new Div(new H2(getTranslation(key)));
        section.add(parts);
        section.addClassName("pw-section");
        return section;
    }

    private Div big(String key, String value) {
        Span name = new Span(getTranslation(key));
        name.addClassName("pw-small");
        Span number = new Span(value);
        number.addClassName("insights-number");
        Div box = new Div(name, number);
        box.addClassName("insights-figure");
        return box;
    }

    private Span money(Money money) {
        return cell(figures.money(money));
    }

    private static Span cell(String text) {
        Span span = new Span(text);
        span.addClassName("pw-number");
        return span;
    }
}
