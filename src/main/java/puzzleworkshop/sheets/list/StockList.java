package puzzleworkshop.sheets.list;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.display.CsvCell;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Workshop;

/** Reads and writes the stock as a list with columns (CSV): lengths in mm, a head line, all lines or none. */
@Service
public class StockList {

    /** What a column may hold; width and height, or the outline, must be there. */
    public enum Column {
        WIDTH,
        HEIGHT,
        OUTLINE,
        MATERIAL,
        GRADE,
        THICKNESS,
        MEASURED,
        BOW,
        PAST,
        GRAIN,
        PLACE,
        COST,
        NOTE;

        String head() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** One line of a list: the board it describes, or what is wrong with it. */
    public record Line(
            int number, Optional<Outline> outline, Optional<BoardFacts> facts, Money cost, List<Sentence> faults) {

        public boolean isGood() {
            return faults.isEmpty();
        }
    }

    /** A list as read: its heads, which column each seems to be, its lines as text. */
    public record Table(List<String> heads, List<Optional<Column>> guessed, List<List<String>> rows) {}

    private static final int MOST_LINES = 20_000;

    private final SheetRack rack;
    private final Bookings bookings;
    private final RackSettings settings;
    private final Workshop workshop;

    StockList(SheetRack rack, Bookings bookings, RackSettings settings, Workshop workshop) {
        this.rack = rack;
        this.bookings = bookings;
        this.settings = settings;
        this.workshop = workshop;
    }

    /** @throws Refused when it is no list with a head line and at least one more */
    public Table read(String text) {
        String first = text.lines().findFirst().orElse("");
        char divider = first.chars().filter(c -> c == ';').count()
                        > first.chars().filter(c -> c == ',').count()
                ? ';'
                : first.indexOf('\t') >= 0 ? '\t' : ',';
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(divider)
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .get();
        String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
        List<List<String>> rows = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(new StringReader(plain), format)) {
            for (CSVRecord line : parser) {
                rows.add(line.toList());
                if (rows.size() > MOST_LINES + 1) {
                    throw new Refused("sheets.list.toolong", MOST_LINES);
                }
            }
        } catch (IOException | UncheckedIOException | IllegalStateException broken) {
            throw new Refused("sheets.list.broken", rows.size() + 1);
        }
        if (rows.size() < 2) {
            throw new Refused("sheets.list.empty");
        }
        List<String> heads = rows.removeFirst();
        return new Table(heads, heads.stream().map(StockList::guess).toList(), rows);
    }

    private static Optional<Column> guess(String head) {
        String plain = head.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", "");
        return Arrays.stream(Column.values())
                .filter(column -> plain.startsWith(column.head()))
                .findFirst();
    }

    /** Each line as a board, by the meaning given to each column; nothing is kept yet. */
    public List<Line> preview(Table table, List<Optional<Column>> meaning) {
        Map<String, String> materials = new HashMap<>();
        settings.materials().forEach(material -> {
            materials.put(material.id(), material.id());
            materials.put(material.name().toLowerCase(Locale.ROOT), material.id());
        });
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < table.rows().size(); i++) {
            Map<Column, String> cells = new LinkedHashMap<>();
            List<String> row = table.rows().get(i);
            for (int c = 0; c < Math.min(row.size(), meaning.size()); c++) {
                String cell = row.get(c);
                meaning.get(c).filter(column -> !cell.isBlank()).ifPresent(column -> cells.put(column, cell));
            }
            lines.add(new ListLine(cells, materials, workshop).read(i + 2, rack));
        }
        return lines;
    }

    /** Takes all boards in, or none. @throws Refused naming the first line with a fault */
    @Books
    @Transactional
    public int takeIn(BookingKey key, List<Line> lines, String who) {
        bookings.once(key, "take in a list of " + lines.size() + " boards", () -> takeInNow(lines, who));
        return lines.size();
    }

    private void takeInNow(List<Line> lines, String who) {
        lines.stream().filter(line -> !line.isGood()).findFirst().ifPresent(bad -> {
            throw new Refused("sheets.list.line", bad.number(), bad.faults().getFirst());
        });
        for (Line line : lines) {
            rack.add(line.outline().orElseThrow(), line.facts().orElseThrow(), line.cost(), "imported", "", who);
        }
    }

    /** What is in the rack, in the form that {@link #read} reads. */
    @Transactional(readOnly = true)
    public String write() {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            List<Object> heads = new ArrayList<>(List.of("number", "state"));
            Arrays.stream(Column.values()).map(Column::head).forEach(heads::add);
            printer.printRecord(heads);
            int offset = 0;
            for (List<Sheet> some = next(0); !some.isEmpty(); some = next(offset)) {
                for (Sheet sheet : some) {
                    printer.printRecord(cells(sheet));
                }
                offset += some.size();
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    private List<Sheet> next(int offset) {
        return rack.list(RackFilter.inRack(), offset, 500);
    }

    private static List<Object> cells(Sheet sheet) {
        Size bounds = sheet.outline().bounds();
        BoardFacts facts = sheet.facts();
        return List.of(
                sheet.id(),
                sheet.state(),
                plain(bounds.width()),
                plain(bounds.height()),
                sheet.outline().isPlainRectangle() ? "" : OutlineText.write(sheet.outline()),
                CsvCell.guarded(facts.material()),
                facts.grade(),
                plain(facts.nominal()),
                facts.measured().map(StockList::plain).orElse(""),
                plain(facts.bow()),
                facts.past(),
                facts.grain(),
                CsvCell.guarded(facts.place()),
                sheet.cost().rounded().amount().toPlainString(),
                CsvCell.guarded(facts.note()));
    }

    private static String plain(Length length) {
        return new BigDecimal(String.format(Locale.ROOT, "%.4f", length.mm()))
                .stripTrailingZeros()
                .toPlainString();
    }
}
