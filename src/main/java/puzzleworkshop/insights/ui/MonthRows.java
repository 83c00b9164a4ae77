package puzzleworkshop.insights.ui;

import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Texts;
import puzzleworkshop.insights.PeriodFigures;
import puzzleworkshop.measure.Money;

/** The months of {@link MonthChart} one below the other, newest first, for a screen too narrow for twelve bars. */
class MonthRows extends Still {

    private static final double FULL = 100;

    MonthRows(List<PeriodFigures<YearMonth>> months, Formatter figures) {
        super(Markup.div("insights-months", rows(months, figures)));
    }

    private static List<Markup> rows(List<PeriodFigures<YearMonth>> months, Formatter figures) {
        double most = months.stream()
                .mapToDouble(month -> month.net().amount().doubleValue())
                .max()
                .orElse(0);
        int first = 0;
        while (first < months.size() - 1 && months.get(first).orders() == 0) {
            first++;
        }
        return months.subList(first, months.size()).reversed().stream()
                .map(month -> row(month, most, figures))
                .toList();
    }

    private static Markup row(PeriodFigures<YearMonth> month, double most, Formatter figures) {
        Markup earned = month.earned().isNegative()
                ? bar("insights-bar-lost", month.earned().negated(), most)
                : bar("insights-bar-earned", month.earned(), most);
        return Markup.div(
                "insights-month",
                Markup.span("insights-soft", month.what().getMonth().getDisplayName(TextStyle.SHORT, Texts.LOCALE)),
                Markup.div("insights-month-track", bar("insights-bar-net", month.net(), most), earned)
                        .with("aria-hidden", "true"),
                Markup.span(
                        "pw-number insights-soft",
                        month.orders() == 0
                                ? "–"
                                : figures.text("insights.month.amounts", month.net(), month.earned())));
    }

    private static Markup bar(String cssClass, Money amount, double most) {
        double share = most > 0 ? amount.amount().doubleValue() / most : 0;
        return Markup.div(cssClass).with("style", "width: " + Math.clamp(share * FULL, 0, FULL) + "%");
    }
}
