package puzzleworkshop.insights.ui;

import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.Texts;
import puzzleworkshop.insights.PeriodFigures;

/** Twelve months as bars: what was sold, and within it what it earned; a loss hangs below the line. */
final class MonthChart {

    private static final double WIDTH = 720;
    private static final double HEIGHT = 200;
    private static final double TOP = 22;
    private static final double FOOT = 24;

    private MonthChart() {}

    static Svg of(List<PeriodFigures<YearMonth>> months, Formatter figures) {
        double most = 1;
        double least = 0;
        StringBuilder said = new StringBuilder();
        for (PeriodFigures<YearMonth> month : months) {
            most = Math.max(most, month.net().amount().doubleValue());
            least = Math.min(least, month.earned().amount().doubleValue());
            if (month.orders() > 0) {
                said.append(figures.text(
                                "insights.chart.month",
                                name(month.what(), TextStyle.FULL),
                                month.net(),
                                month.earned()))
                        .append(' ');
            }
        }
        double perUnit = (HEIGHT - TOP - FOOT) / (most - least);
        double ground = TOP + most * perUnit;
        Svg svg = Svg.of(0, 0, WIDTH, HEIGHT, figures.text("insights.months"), said.toString());
        double slot = WIDTH / months.size();
        double bar = slot * 0.6;
        for (int i = 0; i < months.size(); i++) {
            PeriodFigures<YearMonth> month = months.get(i);
            double x = i * slot + (slot - bar) / 2;
            double net = month.net().amount().doubleValue() * perUnit;
            double earned = month.earned().amount().doubleValue() * perUnit;
            svg.rect(x, ground - net, bar, net, "insights-bar-net");
            if (earned >= 0) {
                svg.rect(x, ground - earned, bar, earned, "insights-bar-earned");
            } else {
                svg.rect(x, ground, bar, -earned, "insights-bar-lost");
            }
            if (month.orders() > 0) {
                svg.text(
                        x + bar / 2,
                        ground - net - 6,
                        11,
                        "middle",
                        figures.number(month.net().amount().doubleValue(), 0),
                        "");
            }
            svg.text(x + bar / 2, HEIGHT - 6, 11, "middle", name(month.what(), TextStyle.SHORT), "insights-soft");
        }
        return svg.line(0, ground, WIDTH, ground, "insights-ground");
    }

    private static String name(YearMonth month, TextStyle style) {
        return month.getMonth().getDisplayName(style, Texts.LOCALE);
    }
}
