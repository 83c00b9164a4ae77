package puzzleworkshop.progress;

import java.time.Instant;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.workshop.Stage;

/**
 * Something went wrong with an order, and what was lost by it.
 *
 * @param noticedAt the stage at which it was seen
 * @param againFrom the stage from which it is made again
 * @param handsLost working time that has to be spent again
 * @param laserLost laser time that has to be spent again
 * @param materialLost cost of what was thrown away
 */
public record Rework(
        long id,
        OrderId order,
        Stage noticedAt,
        Stage againFrom,
        What what,
        String note,
        boolean boardSpoiled,
        Minutes handsLost,
        Minutes laserLost,
        Money materialLost,
        Instant at,
        String who) {

    /** '12 min of work', or that no clock ran where no time is known. */
    public Sentence workLost() {
        return handsLost.value() > 0 ? Sentence.of("bench.lost.work", handsLost) : Sentence.of("bench.lost.no-time");
    }

    /** What goes wrong in this trade; each with the stage from which it is usually made again (common practice). */
    public enum What {
        PRINT_FAULT(Stage.PRINT, Stage.PRINT),
        BUBBLES(Stage.LAMINATE, Stage.PRINT),
        BOARD_BOWED(Stage.SHEET_PREP, Stage.SHEET_PREP),
        STUCK_ASKEW(Stage.STICK, Stage.PRINT),
        PEELING(Stage.STICK, Stage.PRINT),
        MASK_TORN(Stage.MASK, Stage.MASK),
        NOT_THROUGH(Stage.CUT, Stage.CUT),
        CHARRED(Stage.CUT, Stage.PRINT),
        SHIFTED(Stage.CUT, Stage.PRINT),
        PIECE_BROKEN(Stage.CUT, Stage.PRINT),
        PIECE_LOST(Stage.CUT, Stage.PRINT),
        RETURNED(Stage.HAND_OVER, Stage.PRINT),
        OTHER(Stage.PRINT, Stage.PRINT);

        private final Stage earliest;
        private final Stage again;

        What(Stage earliest, Stage again) {
            this.earliest = earliest;
            this.again = again;
        }

        /** From where it is usually made again, never later than the stage at which it was noticed. */
        public Stage usuallyAgainFrom(Stage noticed) {
            return again.compareTo(noticed) <= 0 ? again : noticed;
        }

        /** What can have happened to work that has come to a stage. */
        public static List<What> at(Stage noticed) {
            return Arrays.stream(values())
                    .filter(what -> what.earliest.compareTo(noticed) <= 0)
                    .toList();
        }

        /** What most likely went wrong where nothing else is known: the first of what comes up at the stage itself. */
        public static What likelyAt(Stage noticed) {
            List<What> possible = at(noticed);
            Stage latest = possible.stream()
                    .map(what -> what.earliest)
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
            return possible.stream()
                    .filter(what -> what.earliest == latest)
                    .findFirst()
                    .orElseThrow();
        }

        /**
         * The same where it is known how the cut came out.
         *
         * @param cut what was written down of the order's last cut, if anything was
         */
        public static What likelyAt(Stage noticed, Optional<Trial.Finding> cut) {
            What usual = likelyAt(noticed);
            if (noticed.compareTo(Stage.CUT) < 0 || cut.isEmpty()) {
                return usual;
            }
            if (!cut.get().isGood()) {
                return cut.get().result() == Trial.Result.THROUGH ? CHARRED : NOT_THROUGH;
            }
            // It went through and is clean: of the cut's own mishaps it is most likely that the lines lie askew.
            return usual == NOT_THROUGH ? SHIFTED : usual;
        }

        public String textKey() {
            return "bench.wrong." + name();
        }
    }

    /**
     * What the maker tells.
     *
     * @param board what became of the board held for the order (not yet cut)
     * @param materialLost as the maker corrected it; absent: as reckoned
     */
    public record Report(What what, Stage againFrom, String note, Board board, Optional<Money> materialLost) {}

    /** What became of the board held for the order. */
    public enum Board {
        KEPT,
        /** Only the blank: what is left of the sheet goes back to the rack. */
        BLANK_SPOILED,
        WHOLE_BOARD_SPOILED;

        /**
         * What most likely became of it: a print that has to be made anew after it was stuck takes its blank with it. Once the
         * board is cut there is none held any more.
         */
        public static Board likely(Stage noticed, Stage againFrom) {
            boolean stuck = noticed.compareTo(Stage.STICK) > 0 && noticed.compareTo(Stage.CUT) <= 0;
            return stuck && againFrom.compareTo(Stage.STICK) <= 0 ? BLANK_SPOILED : KEPT;
        }

        public String textKey() {
            return "bench.wrong.board." + name();
        }
    }
}
