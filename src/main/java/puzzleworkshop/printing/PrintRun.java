package puzzleworkshop.printing;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.crosses.Crosses;
import puzzleworkshop.printing.media.PrintMedium;

/**
 * Pictures printed together.
 *
 * @param medium as it was when the run was proposed
 * @param crosses printed in its overhangs, as they were set when the run was proposed
 * @param items all of them, also those dropped or spoiled
 * @param sheets how many are printed; 1 on a roll
 * @param fewestSheets no layout of these prints uses fewer
 * @param length printed length of a roll, edge to edge; on sheets their height
 * @param leastLength on a roll: no layout is shorter
 * @param version rises with every change
 */
public record PrintRun(
        long id,
        RunState state,
        PrintMedium medium,
        Optional<Crosses> crosses,
        List<RunItem> items,
        int sheets,
        int fewestSheets,
        Length length,
        Length leastLength,
        Instant createdAt,
        String createdBy,
        Optional<Instant> printedAt,
        long version) {

    public PrintRun {
        items = List.copyOf(items);
    }

    public boolean isRoll() {
        return medium.kind() == PrintMedium.Kind.ROLL;
    }

    /** One printed sheet, or the printed piece of roll. */
    public Size sheetSize() {
        return isRoll() ? new Size(medium.size().width(), length) : medium.size();
    }

    /** Prints that lie on its sheets: planned ones and those that were printed, spoiled ones among them. */
    public List<RunItem> laid() {
        return items.stream()
                .filter(item -> item.outcome() != RunItem.Outcome.DROPPED)
                .toList();
    }

    public Stream<RunItem> on(int sheet) {
        return laid().stream().filter(item -> item.sheet() == sheet);
    }

    /** How many of its prints were no good. */
    public int spoiled() {
        return (int) items.stream()
                .filter(item -> item.outcome() == RunItem.Outcome.SPOILED)
                .count();
    }

    public List<RunItem> planned() {
        return items.stream()
                .filter(item -> item.outcome() == RunItem.Outcome.PLANNED)
                .toList();
    }

    /** Sticker paper it uses up, waste and margins included. */
    public Area paper() {
        return sheetSize().area().times(sheets);
    }

    /** Share of the paper that becomes stickers, 0 to 1. */
    public double used() {
        double stickers =
                laid().stream().mapToDouble(item -> item.sticker().area().mm2()).sum();
        return sheets == 0 ? 0 : stickers / paper().mm2();
    }

    /** '2 sheets; cannot be fewer', or what is known about the fewest. */
    public Sentence bound() {
        if (isRoll()) {
            return length.mm() <= leastLength.mm() + 0.05
                    ? Sentence.of("printing.bound.roll-best", length)
                    : Sentence.of("printing.bound.roll", length, leastLength);
        }
        return sheets <= fewestSheets
                ? Sentence.of("printing.bound.sheets-best", sheets)
                : Sentence.of("printing.bound.sheets", sheets, fewestSheets);
    }
}
