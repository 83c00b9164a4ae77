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
import java.util.Optional;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
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
        Insights.Since since = insights.since(first);
        List<FinishedOrder> finished = since.finished();
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
                .forEach(section -> section.show(first.atDay(1)).ifPresent(this::add));
        showDrifts(since.drifts(), first);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("insights.title");
    }

    private Div months(List<PeriodFigures<YearMonth>> months) {
        PeriodFigures<YearMonth> now = months.getLast();
        Markup big = Markup.div(
                "insights-big",
                big("insights.month.sold", figures.money(now.net())),
                big("insights.month.earned", figures.money(now.earned())),
                big("insights.month.margin", margin(now.margin())),
                big("insights.month.puzzles", Integer.toString(now.puzzles())),
                big("insights.month.hands", figures.minutes(now.hands())),
                big("insights.month.per-hour", figures.money(now.earnedPerHour())));
        SvgBox chart = new SvgBox("insights-chart").draw(MonthChart.of(months, figures));
        Markup legend = Markup.div(
                "insights-legend",
                key("insights-bar-net", "insights.legend.sold"),
                key("insights-bar-earned", "insights.legend.earned"));
        return section("insights.months", new Still(big), chart, new MonthRows(months, figures), new Still(legend));
    }

    private Markup key(String cssClass, String text) {
        return Markup.div("", Markup.span("insights-swatch " + cssClass, ""), Markup.span(getTranslation(text)));
    }

    private String margin(Optional<Percent> margin) {
        return margin.map(figures::percent).orElse("–");
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
                    Markup.span(figures.size(size.what())),
                    cell(Integer.toString(size.puzzles())),
                    money(size.net()),
                    money(size.earned()),
                    cell(margin(size.margin())),
                    cell(figures.minutes(size.hands())),
                    money(size.earnedPerHour()),
                    verdict(size, i, sizes.size(), floor));
        }
        return section("insights.sizes", table);
    }

    private Markup verdict(PeriodFigures<Size> size, int place, int of, Percent floor) {
        if (size.earned().isNegative()) {
            return Verdict.of(Verdict.Kind.BAD, getTranslation("insights.loses"));
        }
        if (place == 0 && of > 1) {
            return Verdict.of(Verdict.Kind.GOOD, getTranslation("insights.best"));
        }
        boolean under =
                size.margin().filter(margin -> margin.compareTo(floor) < 0).isPresent();
        if (under) {
            return Verdict.of(Verdict.Kind.WARN, getTranslation("insights.under-floor"));
        }
        return place == of - 1 && of > 1
                ? Verdict.of(Verdict.Kind.WAIT, getTranslation("insights.least"))
                : Markup.span("");
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
        return section("insights.orders", new MoreRows<>(table, finished, one -> table.row(order(one)), figures));
    }

    private Markup[] order(FinishedOrder order) {
        String mishap = order.mishaps() > 0 ? getTranslation("insights.mishaps", order.mishaps()) : "";
        return new Markup[] {
            Markup.link("orders/" + order.number(), order.number()),
            Markup.span(order.customer() + mishap),
            money(order.outcome().net()),
            money(order.outcome().reckoned()),
            money(order.outcome().actual()),
            money(order.outcome().earned()),
            cell(margin(order.outcome().margin()))
        };
    }

    private void showDrifts(List<TimeVariance> found, YearMonth since) {
        drifts.removeAll();
        drifts.add(new H2(getTranslation("insights.drift")), new Paragraph(getTranslation("insights.drift.lead")));
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
                    showDrifts(insights.since(since).drifts(), since);
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
                new MoreRows<>(table, open, debt -> table.row(debt(debt, today)), figures));
    }

    private Markup[] debt(Debts.Debt debt, LocalDate today) {
        Markup verdict = debt.open().isNegative()
                ? Verdict.of(Verdict.Kind.WARN, getTranslation("insights.we-owe"))
                : debt.isOverdue(today)
                        ? Verdict.of(
                                Verdict.Kind.BAD,
                                figures.text(
                                        "insights.overdue-since", debt.dueOn().orElseThrow()))
                        : Verdict.of(
                                Verdict.Kind.WAIT,
                                debt.dueOn()
                                        .map(day -> figures.text("insights.due-by", day))
                                        .orElse(getTranslation("insights.not-invoiced")));
        return new Markup[] {
            Markup.link("orders/" + debt.number(), debt.number()),
            Markup.span(debt.customer()),
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

    private Markup big(String key, String value) {
        return Markup.div(
                "insights-figure", Markup.span("pw-small", getTranslation(key)), Markup.span("insights-number", value));
    }

    private Markup money(Money money) {
        return cell(figures.money(money));
    }

    private static Markup cell(String text) {
        return Markup.span("pw-number", text);
    }
}
