package puzzleworkshop.insights.ui;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.insights.work.FigureRows;
import puzzleworkshop.insights.work.FigureRows.Column;
import puzzleworkshop.insights.work.FigureRows.Row;

/**
 * Draws a table of figures as bars: upright ones over time, lying ones for stages, causes and customers. Each look has a
 * colour of the house and a pattern of its own, so that it is told apart in forced colours and in grey print as well.
 */
final class FigurePlot {

    private static final double WIDTH = 720;
    private static final double HEIGHT = 220;
    private static final double TOP = 20;
    private static final double FOOT = 26;
    private static final double SIDE = 170;
    private static final double BAR = 20;
    private static final int MOST_LYING = 20;
    private static final int LETTERS = 26;
    private static final int MOST_LETTERS = 48;
    /** A phone held upright, without its margins. */
    private static final double NARROW = 330;

    private static final double WORDS_ABOVE = 18;
    private static final double NUMBER_BESIDE = 60;
    private static final int MOST_LETTERS_ABOVE = 54;
    /** What a letter takes below the bars with the gap to the next words: labels never run into each other. */
    private static final double BESIDE = 7.4;
    /** A letter of the words below the bars is hardly wider: the first of fifty weeks must not be cut off at the edge. */
    private static final double LETTER = 9;

    private final FigureRows table;
    private final Formatter figures;
    private final List<Integer> drawn = new ArrayList<>();
    private final double most;

    private FigurePlot(FigureRows table, Formatter figures) {
        this.table = table;
        this.figures = figures;
        for (int i = 0; i < table.columns().size(); i++) {
            if (table.columns().get(i).isDrawn()) {
                drawn.add(i);
            }
        }
        double highest = 0;
        for (Row row : table.rows()) {
            double sum = 0;
            for (int column : drawn) {
                double value = value(row, column);
                sum = table.stacked() ? sum + value : Math.max(sum, value);
            }
            highest = Math.max(highest, sum);
        }
        most = highest > 0 ? highest : 1;
    }

    static Svg of(FigureRows table, Formatter figures) {
        FigurePlot plot = new FigurePlot(table, figures);
        return table.topic().isOverTime() ? plot.upright() : plot.lying();
    }

    /** For a phone: lying bars below their words, as wide as the screen. */
    static Svg narrow(FigureRows table, Formatter figures) {
        return new FigurePlot(table, figures).lyingNarrow();
    }

    /** What a screen reader says instead of the drawing; every figure stands in the table below it. */
    private String said() {
        return figures.text(
                "insights.work.plot",
                figures.text(table.topic().textKey()),
                table.rows().size(),
                write(table.columns().get(drawn.getFirst()), most));
    }

    private Svg upright() {
        Svg svg = Svg.of(0, 0, WIDTH, HEIGHT, figures.text(table.topic().textKey()), said());
        double ground = HEIGHT - FOOT;
        double scale = (ground - TOP) / most;
        int rows = table.rows().size();
        double slot = WIDTH / Math.max(1, rows);
        double bar = slot * 0.7 / (table.stacked() ? 1 : drawn.size());
        int longest =
                table.rows().stream().mapToInt(row -> label(row).length()).max().orElse(1);
        int step = Math.max(1, (int) Math.ceil(rows * longest * BESIDE / WIDTH));
        double written = 0;
        for (int i = 0; i < rows; i++) {
            Row row = table.rows().get(i);
            double x = i * slot + slot * 0.15;
            double y = ground;
            for (int column : drawn) {
                double height = value(row, column) * scale;
                svg.rect(x, y - height, bar, height, "insights-plot-" + look(column));
                y = table.stacked() ? y - height : y;
                x = table.stacked() ? x : x + bar;
            }
            if (i % step == 0) {
                String words = label(row);
                double half = words.length() * LETTER / 2;
                double middle = Math.clamp(i * slot + slot / 2, half, WIDTH - half);
                // the last is moved inwards and may come too near to the one before
                if (middle - half >= written) {
                    svg.text(middle, HEIGHT - 8, 11, "middle", words, "insights-soft");
                    written = middle + half;
                }
            }
        }
        svg.text(WIDTH, TOP - 8, 11, "end", write(table.columns().get(drawn.getFirst()), most), "insights-soft");
        svg.line(0, TOP - 4, WIDTH, TOP - 4, "insights-plot-grid");
        return svg.line(0, ground, WIDTH, ground, "insights-ground");
    }

    private Svg lying() {
        int rows = Math.min(MOST_LYING, table.rows().size());
        double thick = BAR * (table.stacked() ? 1 : drawn.size());
        double slot = thick + 10;
        double height = Math.max(slot, rows * slot);
        Svg svg = Svg.of(0, 0, WIDTH, height, figures.text(table.topic().textKey()), said());
        // as much room as the longest words need, so that two settings of one machine are told apart
        int longest = table.rows().stream()
                .limit(rows)
                .mapToInt(row -> figures.shown(row.label()).length())
                .max()
                .orElse(1);
        int letters = Math.clamp(longest, LETTERS, MOST_LETTERS);
        double side = SIDE * letters / LETTERS;
        double scale = (WIDTH - side - 90) / most;
        for (int i = 0; i < rows; i++) {
            Row row = table.rows().get(i);
            double y = i * slot + 5;
            svg.text(side - 8, y + thick / 2 + 4, 12, "end", shortened(row, letters), "");
            for (int column : drawn) {
                bar(svg, row, column, side, y, value(row, column) * scale);
                y += BAR;
            }
        }
        return svg.line(side, 0, side, height, "insights-ground");
    }

    private Svg lyingNarrow() {
        int rows = Math.min(MOST_LYING, table.rows().size());
        double slot = WORDS_ABOVE + BAR * drawn.size() + 12;
        Svg svg = Svg.of(
                0,
                0,
                NARROW,
                Math.max(1, rows) * slot,
                figures.text(table.topic().textKey()),
                said());
        double scale = (NARROW - NUMBER_BESIDE) / most;
        for (int i = 0; i < rows; i++) {
            Row row = table.rows().get(i);
            double y = i * slot + WORDS_ABOVE;
            svg.text(0, y - 5, 12, "start", shortened(row, MOST_LETTERS_ABOVE), "");
            for (int column : drawn) {
                bar(svg, row, column, 0, y, value(row, column) * scale);
                y += BAR;
            }
        }
        return svg;
    }

    private void bar(Svg svg, Row row, int column, double x, double y, double length) {
        svg.rect(x, y, length, BAR - 2, "insights-plot-" + look(column));
        svg.text(
                x + length + 6,
                y + BAR - 6,
                11,
                "start",
                write(table.columns().get(column), value(row, column)),
                "insights-soft");
    }

    private String shortened(Row row, int letters) {
        String words = figures.shown(row.label());
        return words.length() > letters ? words.substring(0, letters - 1) + "…" : words;
    }

    /** What has room below a bar: the number of a week without its Monday, a day without its name and its century. */
    private String label(Row row) {
        String words = figures.shown(row.label());
        int space = words.indexOf(' ');
        return switch (table.topic()) {
            case ON_TIME -> space > 0 ? words.substring(0, space) : words;
            case STOCK -> words.substring(space + 1).replaceAll(" \\d{2}(\\d{2})$", " $1");
            default -> words;
        };
    }

    private String look(int column) {
        return table.columns().get(column).look();
    }

    private static double value(Row row, int column) {
        double value = row.values()[column];
        return Double.isNaN(value) ? 0 : Math.max(0, value);
    }

    private String write(Column column, double value) {
        return FigureWords.of(column.unit(), value, figures);
    }
}
