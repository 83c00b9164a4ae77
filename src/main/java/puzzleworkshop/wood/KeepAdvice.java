package puzzleworkshop.wood;

import java.util.List;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.sheets.Sheet;

/**
 * Which pieces to give away or burn next, so that the rack's room is enough. Proposed; nobody throws anything away for it.
 *
 * @param pieces free boards and offcuts in the rack
 * @param room how many it has room for
 */
public record KeepAdvice(int pieces, int room, List<Spare> spare) {

    /** A piece that will be missed least, and why. */
    public record Spare(Sheet sheet, Sentence why) {}

    public KeepAdvice {
        spare = List.copyOf(spare);
    }
}
