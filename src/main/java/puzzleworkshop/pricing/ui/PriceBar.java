package puzzleworkshop.pricing.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.display.Formatter;
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
        add(summary(answer), track(answer, parts));
        Div legend = new Div();
        legend.addClassName("pricing-legend");
        parts.forEach((part, shown) -> legend.add(part(part, shown, answer)));
        legend.add(earns(answer));
        add(legend);
        tax(answer);
        discount(answer);
        answer.remarks().forEach(remark -> {
            Note note = new Note(Note.Kind.WARN, figures.say(remark));
            add(note);
        });
        return this;
    }

    /** From the net price to what the customer pays, rate by rate; nothing when no tax is charged. */
    private void tax(PriceAnswer answer) {
        VatSum vat = answer.vat();
        if (vat.mode() == VatMode.NONE) {
            return;
        }
        Div rows = new Div();
        rows.addClassName("pricing-tax");
        vat.perRate()
                .forEach(
                        rate -> rows.add(taxRow(figures.text("pricing.bar.vat", rate.rate(), rate.net()), rate.vat())));
        rows.add(taxRow(
                figures.text(
                        "pricing.bar.to-pay",
                        Sentence.of(vat.mode().textKey()),
                        Sentence.of(vat.rounding().textKey())),
                vat.gross()));
        add(rows);
    }

    private Div taxRow(String text, Money money) {
        Div row = new Div(text(text, "pricing-part-name"), amount(money));
        row.addClassName("pricing-tax-row");
        return row;
    }

    private void discount(PriceAnswer answer) {
        if (answer.discount().isPositive()) {
            add(new Paragraph(figures.text(
                    "pricing.bar.discount", answer.discount(), answer.marginBeforeDiscount(), answer.margin())));
        }
    }

    private Div summary(PriceAnswer answer) {
        boolean shipped = !answer.shipping().isZero();
        Div summary = new Div(
                figure("pricing.bar.costs", figures.money(answer.cost())),
                figure(shipped ? "pricing.bar.price-with-shipping" : "pricing.bar.price", figures.money(answer.net())),
                figure(
                        answer.earns().isNegative() ? "pricing.bar.loses" : "pricing.bar.earns",
                        figures.money(answer.earns()) + " · "
                                + (shipped
                                        ? figures.text("pricing.bar.margin-of-puzzles", answer.margin())
                                        : figures.percent(answer.margin()))));
        summary.addClassName("pricing-bar-summary");
        return summary;
    }

    private Span figure(String text, String value) {
        Span number = new Span(value);
        number.addClassName("pw-number");
        Span name = new Span(figures.text(text));
        name.addClassName("pw-small");
        Span both = new Span(name, number);
        both.addClassName("pricing-bar-figure");
        return both;
    }

    /** The picture: one segment for each part, as wide as its share; read out as one sentence. */
    private Div track(PriceAnswer answer, Map<CostPart, Money> parts) {
        Div track = new Div();
        track.addClassName("pricing-bar-track");
        List<String> said = new ArrayList<>();
        parts.forEach((part, shown) -> {
            String name = figures.text(part.textKey()) + " " + figures.money(shown);
            said.add(name);
            if (shown.isPositive()) {
                track.add(segment(part.name(), shown.amount(), name));
            }
        });
        String last = figures.text(answer.earns().isNegative() ? "pricing.part.loses" : "pricing.part.earns") + " "
                + figures.money(answer.earns());
        said.add(last);
        if (answer.earns().isPositive()) {
            track.add(segment("EARNS", answer.earns().amount(), last));
        }
        track.getElement().setAttribute("role", "img");
        track.getElement()
                .setAttribute("aria-label", figures.text("pricing.bar.said", answer.net(), String.join(", ", said)));
        return track;
    }

    private static Div segment(String part, BigDecimal share, String title) {
        Div segment = new Div();
        segment.addClassName("pricing-segment");
        segment.getElement().setAttribute("data-part", part);
        segment.getElement().setAttribute("title", title);
        segment.getStyle().set("flex-grow", share.toPlainString());
        return segment;
    }

    private NativeDetails part(CostPart part, Money shown, PriceAnswer answer) {
        NativeDetails details = new NativeDetails(legend(part.name(), part.textKey(), shown, answer));
        details.addClassName("pricing-part");
        Div lines = new Div();
        lines.addClassName("pricing-lines");
        List<CostLine> of = answer.costs().linesOf(part);
        List<Money> amounts = CostSheet.shownLines(shown, of);
        for (int i = 0; i < of.size(); i++) {
            lines.add(line(of.get(i), amounts.get(i)));
        }
        details.setContent(lines);
        details.setOpen(opened.contains(part));
        details.addToggleListener(event -> {
            if (event.isOpened()) {
                opened.add(part);
            } else {
                opened.remove(part);
            }
        });
        return details;
    }

    private Div line(CostLine line, Money shown) {
        Div row = new Div(text(figures.say(line.what()), "pricing-line-what"), amount(shown));
        row.addClassName("pricing-line");
        String how = words.quantityTimesRate(line);
        row.add(text((how.isEmpty() ? "" : how + " · ") + words.source(line), "pricing-line-how"));
        List<Money> amounts = CostSheet.shownLines(shown, line.lines());
        for (int i = 0; i < line.lines().size(); i++) {
            Div below = line(line.lines().get(i), amounts.get(i));
            below.addClassName("pricing-line-below");
            row.add(below);
        }
        return row;
    }

    private Div earns(PriceAnswer answer) {
        String key = answer.earns().isNegative() ? "pricing.part.loses" : "pricing.part.earns";
        Div row = new Div(legend("EARNS", key, answer.earns(), answer));
        row.addClassNames("pricing-part", "pricing-part-earns");
        return row;
    }

    private Div legend(String part, String nameKey, Money shown, PriceAnswer answer) {
        Span swatch = new Span();
        swatch.addClassName("pricing-swatch");
        swatch.getElement().setAttribute("data-part", part).setAttribute("aria-hidden", "true");
        Span share = text(figures.percent(Percent.share(shown, answer.net())), "pw-unit");
        Div row = new Div(swatch, text(figures.text(nameKey), "pricing-part-name"), share, amount(shown));
        row.addClassName("pricing-part-row");
        return row;
    }

    private Span amount(Money money) {
        return text(figures.money(money), "pricing-amount");
    }

    private static Span text(String text, String cssClass) {
        Span span = new Span(text);
        span.addClassName(cssClass);
        return span;
    }
}
