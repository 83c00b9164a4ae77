package puzzleworkshop.demo;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.springframework.core.io.ClassPathResource;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.workshop.Stage;

/** The demo's customers and what they order, in the order in which they came. */
final class DemoScript {

    private static final ClassPathResource TABLE = new ClassPathResource("demo/orders.csv");

    /** How far an order has come. */
    enum Reached {
        QUOTE,
        WAITS_FOR_APPROVAL,
        APPROVED,
        STAGES,
        /** Packed, and its customer was told to come for it. */
        READY,
        HANDED_OVER,
        CLOSED
    }

    /**
     * One order.
     *
     * @param taken days before the day on which the demo is made
     * @param scene of its picture; empty: none was sent yet
     * @param dueIn counted from the day on which the demo is made
     * @param workingDays whether only working days are counted
     * @param next the stage that waits
     * @param way the name of the one by which it leaves; empty: the workshop's first
     */
    record Line(
            String customer,
            String contact,
            int taken,
            Optional<Scene> scene,
            Size size,
            int pieces,
            BoardKind board,
            int quantity,
            IntendedAge age,
            int dueIn,
            boolean workingDays,
            Reached reached,
            Optional<Stage> next,
            Optional<String> way) {}

    private DemoScript() {}

    static List<Line> read() {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (InputStreamReader text = new InputStreamReader(TABLE.getInputStream(), StandardCharsets.UTF_8);
                CSVParser rows = CSVParser.parse(text, format)) {
            return rows.stream().map(DemoScript::line).toList();
        } catch (IOException e) {
            throw new UncheckedIOException("The demo's orders cannot be read.", e);
        }
    }

    private static Line line(CSVRecord row) {
        return new Line(
                row.get("customer"),
                row.get("contact"),
                Integer.parseInt(row.get("taken")),
                word(row, "scene").map(Scene::valueOf),
                Size.mm(Double.parseDouble(row.get("width_mm")), Double.parseDouble(row.get("height_mm"))),
                Integer.parseInt(row.get("pieces")),
                new BoardKind(
                        row.get("material"), row.get("grade"), Length.mm(Double.parseDouble(row.get("thickness_mm")))),
                Integer.parseInt(row.get("quantity")),
                IntendedAge.valueOf(row.get("age")),
                Integer.parseInt(row.get("due")),
                row.get("counted_in").equals("working days"),
                Reached.valueOf(row.get("reached")),
                word(row, "next").map(Stage::valueOf),
                word(row, "way"));
    }

    private static Optional<String> word(CSVRecord row, String column) {
        return Optional.of(row.get(column)).filter(text -> !text.isEmpty());
    }
}
