package puzzleworkshop.pricing.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.pricing.cost.CostLine;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.pricing.cost.CostSheet;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.tax.VatSum;

/**
 * A net price as a bar of what it pays for, with a legend whose parts open to their lines: quantity × rate, source and
 * day. May be shown again and again; parts that a person opened stay open.
 */
@StyleSheet("context://pricing.css")
public class PriceBar extends Div {

    /** The part whose line was pressed; empty for a press beside the lines. */
    private static final String PRESSED =
            "(event.target.closest('summary')?.querySelector('[data-part]')?.dataset.part ?? '')";

    private final transient Formatter figures;
    private final transient CostLabels words;
    private final Set<CostPart> opened = EnumSet.noneOf(CostPart.class);

    public PriceBar(Formatter figures) {
        this.figures = figures;
        this.words = new CostLabels(figures);
        addClassName("pricing-bar");
    }

    /** Draws an answer in place of the one before. */
    public PriceBar show(PriceAnswer answer) {
        removeAll();
        Map<CostPart, Money> parts = answer.costs().shownParts();
        add(new Still(summary(answer)), new Still(track(answer, parts)));
        add(legend(answer, parts));
        if (answer.vat().mode() != VatMode.NONE) {
            add(new Still(tax(answer.vat())));
        }
        if (answer.discount().isPositive()) {
            add(new Still(Markup.of(
                    "p",
                    "",
                    figures.text(
                            "pricing.bar.discount",
                            answer.discount(),
                            answer.marginBeforeDiscount(),
                            answer.margin()))));
        }
        answer.remarks().forEach(remark -> add(new Note(Note.Kind.WARN, figures.say(remark))));
        return this;
    }

    /** From the net price to what the customer pays, rate by rate. */
    private Markup tax(VatSum vat) {
        List<Markup> rows = new ArrayList<>();
        vat.perRate()
                .forEach(
                        rate -> rows.add(taxRow(figures.text("pricing.bar.vat", rate.rate(), rate.net()), rate.vat())));
        rows.add(taxRow(
                figures.text(
                        "pricing.bar.to-pay",
                        Sentence.of(vat.mode().textKey()),
                        Sentence.of(vat.rounding().textKey())),
                vat.gross()));
        return Markup.div("pricing-tax", rows);
    }

    private Markup taxRow(String text, Money money) {
        return Markup.div("pricing-tax-row", Markup.span("pricing-part-name", text), amount(money));
    }

    private Markup summary(PriceAnswer answer) {
        boolean shipped = !answer.shipping().isZero();
        return Markup.div(
                "pricing-bar-summary",
                figure("pricing.bar.costs", figures.money(answer.cost())),
                figure(shipped ? "pricing.bar.price-with-shipping" : "pricing.bar.price", figures.money(answer.net())),
                figure(
                        answer.earns().isNegative() ? "pricing.bar.loses" : "pricing.bar.earns",
                        figures.money(answer.earns()) + " · "
                                + (shipped
                                        ? figures.text("pricing.bar.margin-of-puzzles", answer.margin())
                                        : figures.percent(answer.margin()))));
    }

    private Markup figure(String text, String value) {
        return Markup.of(
                "span",
                "pricing-bar-figure",
                Markup.span("pw-small", figures.text(text)),
                Markup.span("pw-number", value));
    }

    /** The picture: one segment for each part, as wide as its share; read out as one sentence. */
    private Markup track(PriceAnswer answer, Map<CostPart, Money> parts) {
        List<Markup> segments = new ArrayList<>();
        List<String> said = new ArrayList<>();
        parts.forEach((part, shown) -> {
            String name = figures.text(part.textKey()) + " " + figures.money(shown);
            said.add(name);
            if (shown.isPositive()) {
                segments.add(segment(part.name(), shown.amount(), name));
            }
        });
        String last = figures.text(answer.earns().isNegative() ? "pricing.part.loses" : "pricing.part.earns") + " "
                + figures.money(answer.earns());
        said.add(last);
        if (answer.earns().isPositive()) {
            segments.add(segment("EARNS", answer.earns().amount(), last));
        }
        return Markup.div("pricing-bar-track", segments)
                .with("role", "img")
                .with("aria-label", figures.text("pricing.bar.said", answer.net(), String.join(", ", said)));
    }

    private static Markup segment(String part, BigDecimal share, String title) {
        return Markup.div("pricing-segment")
                .with("data-part", part)
                .with("title", title)
                .with("style", "flex-grow: " + share.toPlainString());
    }

    /** The parts below one another, each opened by a press on its line, which the browser does by itself. */
    private Still legend(PriceAnswer answer, Map<CostPart, Money> parts) {
        List<Markup> rows = new ArrayList<>();
        parts.forEach((part, shown) -> rows.add(part(part, shown, answer)));
        rows.add(earns(answer));
        Still legend = new Still(Markup.div("pricing-legend", rows));
        legend.getElement()
                .addEventListener(
                        "click",
                        event -> remember(event.getEventData().get(PRESSED).asString()))
                .addEventData(PRESSED)
                .setFilter(PRESSED + " !== ''");
        return legend;
    }

    private void remember(String pressed) {
        Arrays.stream(CostPart.values())
                .filter(part -> part.name().equals(pressed))
                .filter(part -> !opened.remove(part))
                .forEach(opened::add);
    }

    private Markup part(CostPart part, Money shown, PriceAnswer answer) {
        Markup details = Markup.of(
                "details",
                "pricing-part",
                Markup.of("summary", "", legend(part.name(), part.textKey(), shown, answer)),
                Markup.div("pricing-lines", lines(answer.costs().linesOf(part), shown, "pricing-line")));
        return opened.contains(part) ? details.with("open", "") : details;
    }

    private List<Markup> lines(List<CostLine> lines, Money shown, String cssClasses) {
        List<Money> amounts = CostSheet.shownLines(shown, lines);
        List<Markup> rows = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            rows.add(line(lines.get(i), amounts.get(i), cssClasses));
        }
        return rows;
    }

    private Markup line(CostLine line, Money shown, String cssClasses) {
        String how = words.quantityTimesRate(line);
        List<Markup> row = new ArrayList<>();
        row.add(Markup.span("pricing-line-what", figures.say(line.what())));
        row.add(amount(shown));
        row.add(Markup.span("pricing-line-how", (how.isEmpty() ? "" : how + " · ") + words.source(line)));
        row.addAll(lines(line.lines(), shown, "pricing-line pricing-line-below"));
        return Markup.div(cssClasses, row);
    }

    private Markup earns(PriceAnswer answer) {
        String key = answer.earns().isNegative() ? "pricing.part.loses" : "pricing.part.earns";
        return Markup.div("pricing-part pricing-part-earns", legend("EARNS", key, answer.earns(), answer));
    }

    private Markup legend(String part, String nameKey, Money shown, PriceAnswer answer) {
        return Markup.div(
                "pricing-part-row",
                Markup.span("pricing-swatch", "").with("data-part", part).with("aria-hidden", "true"),
                Markup.span("pricing-part-name", figures.text(nameKey)),
                Markup.span("pw-unit", figures.percent(Percent.share(shown, answer.net()))),
                amount(shown));
    }

    private Markup amount(Money money) {
        return Markup.span("pricing-amount", figures.money(money));
    }
}
