package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.insights.PeriodFigures;
import puzzleworkshop.measure.Money;

/** The months of {@link MonthChart} one below the other, newest first, for a screen too narrow for twelve bars. */
class MonthRows extends Div {

    private static final double FULL = 100;

    MonthRows(List<PeriodFigures<YearMonth>> months, Formatter figures) {
        addClassName("insights-months");
        double most = months.stream()
                .mapToDouble(month -> month.net().amount().doubleValue())
                .max()
                .orElse(0);
        int first = 0;
        while (first < months.size() - 1 && months.get(first).orders() == 0) {
            first++;
        }
        for (PeriodFigures<YearMonth> month :
                months.subList(first, months.size()).reversed()) {
            add(row(month, most, figures));
        }
    }

    private static Div row(PeriodFigures<YearMonth> month, double most, Formatter figures) {
        Span name = new Span(month.what().getMonth().getDisplayName(TextStyle.SHORT, Texts.LOCALE));
        name.addClassName("insights-soft");
        Div track = new Div(bar("insights-bar-net", month.net(), most));
        track.add(
                month.earned().isNegative()
                        ? bar("insights-bar-lost", month.earned().negated(), most)
                        : bar("insights-bar-earned", month.earned(), most));
        track.addClassName("insights-month-track");
        track.getElement().setAttribute("aria-hidden", "true");
        Span amounts = new Span(
                month.orders() == 0 ? "–" : figures.text("insights.month.amounts", month.net(), month.earned()));
        amounts.addClassNames("pw-number", "insights-soft");
        Div row = new Div(name, track, amounts);
        row.addClassName("insights-month");
        return row;
    }

    private static Div bar(String cssClass, Money amount, double most) {
        Div bar = new Div();
        bar.addClassName(cssClass);
        double share = most > 0 ? amount.amount().doubleValue() / most : 0;
        bar.getStyle().set("width", Math.clamp(share * FULL, 0, FULL) + "%");
        return bar;
    }
}
