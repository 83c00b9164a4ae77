package puzzleworkshop.boards;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.find.NewSheet;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.workshop.TradeNumbers;

/**
 * Which boards the puzzles of one order are cut from. Several puzzles may lie side by side on one board as one block.
 *
 * @param blocks together they hold as many puzzles as were ordered, or fewer where no board can be had
 * @param missing puzzles and parts of trays for which there is neither a sheet nor a board to buy
 */
public record BlankPlan(List<Block> blocks, int missing) {

    /**
     * Puzzles, or frames and backings of trays, side by side on one board.
     *
     * @param part what lies on it
     * @param across how many side by side
     * @param down how many below each other
     * @param size of the whole block, margins included
     * @param sheet where it lies, when a sheet of the rack gives it
     * @param board what to buy, when none does
     */
    public record Block(
            Part part, int across, int down, Size size, Optional<Suggestion> sheet, Optional<NewSheet> board) {

        /** How many parts lie on it. */
        public int count() {
            return across * down;
        }

        /** What the wood under the block carries in cost. */
        public Money cost() {
            return sheet.map(Suggestion::blankCost)
                    .orElseGet(() -> board.orElseThrow().blankCost());
        }
    }

    /** What a block holds. */
    public enum Part {
        PUZZLE,
        /** Frames and backings, two for each puzzle; bare wood. */
        TRAY;

        public String textKey() {
            return "boards.block." + name();
        }
    }

    public BlankPlan {
        blocks = List.copyOf(blocks);
    }

    public boolean isComplete() {
        return missing == 0;
    }

    /** How many boards must be bought. */
    public long boardsToBuy() {
        return blocks.stream().filter(block -> block.board().isPresent()).count();
    }

    /** Room between the parts of trays, so that each has an edge of its own and the sheet holds together. */
    private static final Length BETWEEN_TRAYS = Length.mm(3);

    /** Size of a block of frames and backings: no sticker, the hold-down margin once around them all. */
    public static Size trayBlockSize(TradeNumbers numbers, Size outer, int across, int down) {
        return new Size(
                        outer.width().times(across).plus(BETWEEN_TRAYS.times(across - 1.0)),
                        outer.height().times(down).plus(BETWEEN_TRAYS.times(down - 1.0)))
                .grownBy(numbers.holdDownMargin());
    }

    /** Size of a block: the stickers keep their overhang apart, and the hold-down margin goes once around them all. */
    public static Size blockSize(TradeNumbers numbers, Size finished, int across, int down) {
        Size sticker = numbers.stickerFor(finished);
        Length margin = numbers.holdDownMargin();
        return new Size(sticker.width().times(across), sticker.height().times(down)).grownBy(margin);
    }
}
