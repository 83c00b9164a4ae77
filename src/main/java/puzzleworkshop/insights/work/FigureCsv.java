package puzzleworkshop.insights.work;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.CsvCell;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Sentence;

/** A table of figures for a spreadsheet: RFC 4180, plain numbers with a point, units in the heads. */
@Component
public class FigureCsv {

    private static final int DIGITS = 4;

    private final Formatter figures;

    FigureCsv(Formatter figures) {
        this.figures = figures;
    }

    public String of(FigureRows rows) {
        StringWriter out = new StringWriter();
        try (CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
            List<String> head = new ArrayList<>(List.of(figures.say(rows.first())));
            rows.columns()
                    .forEach(column -> head.add(figures.text(
                            "insights.work.csv-head",
                            column.head(),
                            Sentence.of("insights.work.unit." + column.unit().name()))));
            printer.printRecord(head);
            for (FigureRows.Row row : rows.rows()) {
                List<String> cells = new ArrayList<>(List.of(CsvCell.guarded(figures.shown(row.label()))));
                for (double value : row.values()) {
                    cells.add(
                            Double.isNaN(value)
                                    ? ""
                                    : BigDecimal.valueOf(value)
                                            .setScale(DIGITS, RoundingMode.HALF_UP)
                                            .stripTrailingZeros()
                                            .toPlainString());
                }
                printer.printRecord(cells);
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return out.toString();
    }
}
