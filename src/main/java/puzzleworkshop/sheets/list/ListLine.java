package puzzleworkshop.sheets.list;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.display.CsvCell;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.list.StockList.Column;
import puzzleworkshop.sheets.list.StockList.Line;
import puzzleworkshop.workshop.Workshop;

/** Makes a board of one line of a list, and gathers all that is wrong with the line. */
final class ListLine {

    private final Map<Column, String> cells;
    private final Map<String, String> materials;
    private final Workshop workshop;
    private final List<Sentence> faults = new ArrayList<>();

    ListLine(Map<Column, String> cells, Map<String, String> materials, Workshop workshop) {
        this.cells = cells;
        this.materials = materials;
        this.workshop = workshop;
    }

    Line read(int number, SheetRack rack) {
        Optional<Outline> outline = outline();
        Length nominal = length(Column.THICKNESS).orElse(workshop.tradeNumbers().boardThickness());
        BoardFacts facts = new BoardFacts(
                material(),
                choice(Column.GRADE, Grade.class, Grade.CRAFT),
                nominal,
                length(Column.MEASURED),
                length(Column.BOW).orElse(Length.ZERO),
                // a list that does not say it is clean does not make it clean
                choice(Column.PAST, BoardContamination.class, BoardContamination.UNKNOWN),
                choice(Column.GRAIN, Grain.class, Grain.NONE),
                CsvCell.unguarded(cells.getOrDefault(Column.PLACE, "")),
                CsvCell.unguarded(cells.getOrDefault(Column.NOTE, "")));
        Money cost = cost();
        if (faults.isEmpty() && outline.isPresent()) {
            try {
                rack.requirePossible(outline.get(), facts, cost);
            } catch (Refused refused) {
                faults.add(refused.sentence());
            }
        }
        return new Line(number, outline, Optional.of(facts), cost, List.copyOf(faults));
    }

    private Optional<Outline> outline() {
        try {
            if (cells.containsKey(Column.OUTLINE)) {
                return Optional.of(OutlineText.read(cells.get(Column.OUTLINE)));
            }
            Optional<Length> width = length(Column.WIDTH);
            Optional<Length> height = length(Column.HEIGHT);
            if (width.isPresent()
                    && height.isPresent()
                    && width.get().isPositive()
                    && height.get().isPositive()) {
                return Optional.of(Outline.rectangle(new Size(width.get(), height.get())));
            }
            faults.add(Sentence.of("sheets.list.nosize"));
        } catch (Refused impossible) {
            faults.add(impossible.sentence());
        }
        return Optional.empty();
    }

    private Optional<Length> length(Column column) {
        return number(column).map(value -> Length.mm(value.doubleValue()));
    }

    private Optional<BigDecimal> number(Column column) {
        String text = cells.get(column);
        if (text == null) {
            return Optional.empty();
        }
        try {
            String plain = text.replaceAll("(?i)\\s*mm$", "").strip().replace(',', '.');
            return Optional.of(new BigDecimal(plain));
        } catch (NumberFormatException notANumber) {
            faults.add(Sentence.of("sheets.list.notanumber", text, column.head()));
            return Optional.empty();
        }
    }

    private String material() {
        String text = cells.get(Column.MATERIAL);
        String id = text == null ? "birch-ply" : materials.get(text.toLowerCase(Locale.ROOT));
        if (id == null) {
            faults.add(Sentence.of("sheets.material.unknown", text));
            return "birch-ply";
        }
        return id;
    }

    private <E extends Enum<E>> E choice(Column column, Class<E> type, E otherwise) {
        String text = cells.get(column);
        if (text == null) {
            return otherwise;
        }
        try {
            return Enum.valueOf(type, text.strip().toUpperCase(Locale.ROOT).replaceAll("[\\s-]+", "_"));
        } catch (IllegalArgumentException unknown) {
            faults.add(Sentence.of(
                    "sheets.list.nochoice",
                    text,
                    column.head(),
                    String.join(
                            ", ",
                            java.util.Arrays.stream(type.getEnumConstants())
                                    .map(e -> e.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                                    .toList())));
            return otherwise;
        }
    }

    private Money cost() {
        return Money.of(number(Column.COST).orElse(BigDecimal.ZERO), workshop.currency());
    }
}
