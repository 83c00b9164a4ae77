package puzzleworkshop.insights.ui;

import puzzleworkshop.display.Formatter;
import puzzleworkshop.insights.work.FigureRows;

/** A figure as people read it. */
final class FigureWords {

    private FigureWords() {}

    static String of(FigureRows.Unit unit, double value, Formatter figures) {
        if (Double.isNaN(value)) {
            return "–";
        }
        return switch (unit) {
            case COUNT -> figures.number(value, 0);
            case PERCENT -> figures.number(value, 0) + " %";
            case DAYS -> figures.text("insights.work.days", figures.number(value, 1));
            case HOURS ->
                value > 0 && value < 1
                        ? figures.text("insights.work.minutes", figures.number(value * 60, 0))
                        : figures.text("insights.work.hours", figures.number(value, 1));
            case SQUARE_METRES -> figures.number(value, 2) + " m²";
            case MONEY -> figures.amount(value);
        };
    }
}
