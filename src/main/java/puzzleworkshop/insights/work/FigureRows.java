package puzzleworkshop.insights.work;

import java.util.List;
import puzzleworkshop.measure.Sentence;

/**
 * A table of figures and what of it is drawn.
 *
 * @param first what the first column holds
 * @param stacked whether the drawn columns add up to a whole
 */
public record FigureRows(Topic topic, Sentence first, List<Column> columns, List<Row> rows, boolean stacked) {

    public FigureRows {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
    }

    /** What a figure is; decides how it is written. */
    public enum Unit {
        COUNT,
        PERCENT,
        DAYS,
        HOURS,
        SQUARE_METRES,
        MONEY
    }

    /**
     * @param look which of the plot's looks it is drawn in; empty when it stands in the table only
     */
    public record Column(Sentence head, Unit unit, String look) {

        public boolean isDrawn() {
            return !look.isEmpty();
        }
    }

    /**
     * @param key finds the orders behind the row; empty when there are none
     * @param label a {@link Sentence}, a day, or a name
     * @param values one for each column, in its unit; NaN where there is none
     */
    public record Row(String key, Object label, double[] values) {}

    /** An order behind a row, and the figure it adds to it. */
    public record Behind(String number, String customer, double value) {}
}
