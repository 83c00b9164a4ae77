package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import jakarta.annotation.security.RolesAllowed;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.insights.work.FigureCsv;
import puzzleworkshop.insights.work.FigureRows;
import puzzleworkshop.insights.work.FigureRows.Behind;
import puzzleworkshop.insights.work.FigureRows.Column;
import puzzleworkshop.insights.work.FigureRows.Row;
import puzzleworkshop.insights.work.Period;
import puzzleworkshop.insights.work.Topic;
import puzzleworkshop.insights.work.WorkFigures;
import puzzleworkshop.workshop.Workshop;

/** Figures beyond money: one topic at a time as a plot, a table and a file, each figure with the orders behind it. */
@Route("figures/work")
@RolesAllowed("OWNER")
@StyleSheet("context://insights.css")
public class WorkFiguresView extends Div implements HasDynamicTitle {

    /** @param year 0 for the last twelve months, -1 for all */
    private record Choice(int year) {}

    private static final Choice TWELVE_MONTHS = new Choice(0);
    private static final Choice ALL = new Choice(-1);

    private final transient WorkFigures work;
    private final transient FigureCsv csv;
    private final transient Workshop workshop;
    private final transient Formatter figures;
    private final Select<Topic> topic = new Select<>();
    private final Select<Choice> span = new Select<>();
    /** What the stock was worth on one day; empty: at the end of each month of the period. */
    private final DayField day;

    private final Div content = new Div();

    public WorkFiguresView(WorkFigures work, FigureCsv csv, Workshop workshop, Formatter figures) {
        this.work = work;
        this.csv = csv;
        this.workshop = workshop;
        this.figures = figures;
        addClassName("pw-page");
        PageHead head = new PageHead(
                getTranslation("insights.work.title"),
                new Paragraph(getTranslation("insights.work.lead")),
                new Anchor("figures", getTranslation("insights.work.back")));
        topic.setLabel(getTranslation("insights.work.topic"));
        topic.setItems(Topic.values());
        topic.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        topic.setValue(Topic.ON_TIME);
        span.setLabel(getTranslation("insights.work.period"));
        span.setItems(spans());
        span.setItemLabelGenerator(one -> one.equals(TWELVE_MONTHS)
                ? getTranslation("insights.work.period.twelve")
                : one.equals(ALL) ? getTranslation("insights.work.period.all") : String.valueOf(one.year()));
        span.setValue(TWELVE_MONTHS);
        topic.setMinWidth("19rem");
        span.setMinWidth("14rem");
        day = new DayField(getTranslation("insights.work.day"));
        day.setMax(workshop.today());
        day.setClearButtonVisible(true);
        day.addValueChangeListener(change -> show());
        topic.addValueChangeListener(change -> show());
        span.addValueChangeListener(change -> show());
        Div choice = new Div(topic, span, day);
        choice.addClassName("pw-row");
        content.addClassName("pw-stack");
        add(head, choice, content);
        show();
    }

    @Override
    public String getPageTitle() {
        return getTranslation("insights.work.title");
    }

    private List<Choice> spans() {
        List<Choice> spans = new ArrayList<>(List.of(TWELVE_MONTHS));
        int first = work.firstYear();
        for (int year = workshop.today().getYear(); year >= first; year--) {
            spans.add(new Choice(year));
        }
        spans.add(ALL);
        return spans;
    }

    private Period period() {
        LocalDate today = workshop.today();
        if (day.isVisible() && day.getValue() != null && !day.getValue().isAfter(today)) {
            return new Period(day.getValue(), day.getValue());
        }
        Choice chosen = span.getValue();
        if (chosen.equals(TWELVE_MONTHS)) {
            return Period.yearUntil(today);
        }
        return chosen.equals(ALL)
                ? new Period(LocalDate.of(Math.min(work.firstYear(), today.getYear()), 1, 1), today)
                : Period.year(chosen.year(), today);
    }

    private void show() {
        content.removeAll();
        day.setVisible(topic.getValue() == Topic.STOCK);
        if (topic.getValue() == null || span.getValue() == null) {
            return;
        }
        Period period = period();
        FigureRows rows = work.of(topic.getValue(), period);
        SmallText days = new SmallText(
                period.from().equals(period.to())
                        ? figures.day(period.to())
                        : figures.text("insights.work.span", period.from(), period.to()));
        // its lead says which years stand beside each other
        days.setVisible(topic.getValue() != Topic.MONTHS);
        H2 title = new H2(getTranslation(rows.topic().textKey()));
        Paragraph lead = new Paragraph(figures.text(
                rows.topic().textKey() + ".lead", workshop.currency().getCurrencyCode()));
        if (rows.rows().isEmpty()) {
            Div empty = new Div(title, days, new Paragraph(getTranslation("insights.work.empty")));
            empty.addClassName("pw-empty");
            content.add(empty);
            return;
        }
        Div section = new Div(title, days, lead, plot(rows), legend(rows), table(rows, period), file(rows));
        section.addClassName("pw-section");
        content.add(section);
    }

    private Component plot(FigureRows rows) {
        SvgBox plot = new SvgBox("insights-plot").draw(FigurePlot.of(rows, figures));
        if (!rows.topic().isOverTime()) {
            // the style sheet shows the one that fits the screen
            plot.addClassName("insights-plot-wide");
            return new Div(
                    plot, new SvgBox("insights-plot", "insights-plot-narrow").draw(FigurePlot.narrow(rows, figures)));
        }
        plot.addClassName("insights-plot-in-time");
        // on a phone it is wider than the screen, and goes sideways by keys too
        plot.getElement().setAttribute("tabindex", "0");
        return plot;
    }

    private Still legend(FigureRows rows) {
        return new Still(Markup.div(
                "insights-legend",
                rows.columns().stream()
                        .filter(Column::isDrawn)
                        .map(column -> Markup.div(
                                "",
                                Markup.span("insights-swatch insights-plot-" + column.look(), ""),
                                Markup.span(figures.say(column.head()))))
                        .toList()));
    }

    private Component table(FigureRows rows, Period period) {
        FigureTable table = new FigureTable("insights-work").word(rows.first());
        rows.columns().forEach(column -> table.figure(column.head()));
        table.getStyle()
                .set(
                        "--insights-columns",
                        "minmax(9rem, 1fr) repeat(" + rows.columns().size() + ", auto)");
        List<Row> shown = rows.topic().isOverTime() && rows.topic() != Topic.MONTHS
                ? rows.rows().reversed()
                : rows.rows();
        return new MoreRows<>(table, shown, row -> fill(table, rows, row, period), figures);
    }

    private void fill(FigureTable table, FigureRows rows, Row row, Period period) {
        List<Markup> cells = new ArrayList<>();
        for (int i = 0; i < row.values().length; i++) {
            cells.add(Markup.span(
                    "pw-number", FigureWords.of(rows.columns().get(i).unit(), row.values()[i], figures)));
        }
        String words = figures.shown(row.label());
        if (row.key().isEmpty()) {
            cells.addFirst(Markup.span(words));
            table.row(cells.toArray(Markup[]::new));
            return;
        }
        Button open = new Button(words, press -> open(rows, row, period));
        open.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        open.addClassNames("insights-open", "pw-on-paper");
        open.setAriaLabel(getTranslation("insights.work.open", words));
        table.row(open, cells);
    }

    private void open(FigureRows rows, Row row, Period period) {
        List<Behind> behind = work.behind(rows.topic(), period, row.key());
        Dialog dialog = new Dialog();
        dialog.setHeaderTitle(figures.text("insights.work.behind", row.label()));
        dialog.setWidth("min(34rem, 95vw)");
        String unit = "insights.work.behind." + rows.topic().name();
        FigureTable table = new FigureTable("insights-behind")
                .word("insights.order")
                .word("insights.customer")
                .figure(unit);
        FigureRows.Unit kind = behindUnit(rows.topic());
        dialog.add(new MoreRows<>(
                table,
                behind,
                one -> table.row(
                        Markup.link("orders/" + one.number(), one.number()),
                        Markup.span(one.customer()),
                        Markup.span("pw-number", FigureWords.of(kind, one.value(), figures))),
                figures));
        dialog.getFooter().add(new Button(getTranslation("insights.work.close"), press -> dialog.close()));
        dialog.open();
    }

    private static FigureRows.Unit behindUnit(Topic topic) {
        return switch (topic) {
            case ON_TIME, LEAD_TIME -> FigureRows.Unit.DAYS;
            case HOURS -> FigureRows.Unit.HOURS;
            case OFFCUTS, WOOD -> FigureRows.Unit.SQUARE_METRES;
            case COMPLAINTS -> FigureRows.Unit.COUNT;
            case REJECTS, STOCK, CUSTOMERS, MONTHS -> FigureRows.Unit.MONEY;
        };
    }

    private Anchor file(FigureRows rows) {
        byte[] bytes = csv.of(rows).getBytes(StandardCharsets.UTF_8);
        String name = rows.topic().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-') + ".csv";
        return new Anchor(
                DownloadHandler.fromInputStream(event -> new DownloadResponse(
                        new ByteArrayInputStream(bytes), name, "text/csv; charset=utf-8", bytes.length)),
                getTranslation("insights.work.csv"));
    }
}
