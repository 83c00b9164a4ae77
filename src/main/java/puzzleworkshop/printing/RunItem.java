package puzzleworkshop.printing;

import java.time.LocalDate;
import java.util.Optional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.media.PrintMedium;

/**
 * One print in a run and where it lies. The place is that of the sticker together with its label band; it is turned
 * clockwise, so that the band, below the picture, comes to its left.
 *
 * @param id 0 while not yet kept
 * @param look what was approved when it was planned
 * @param sheet from 0
 * @param x from the left edge of the sheet
 * @param y from its top
 * @param pinned whether it stays there when the others are laid out anew
 */
public record RunItem(
        long id,
        OrderRef order,
        int copy,
        String look,
        Size finished,
        Length overhang,
        Optional<LocalDate> due,
        int sheet,
        Length x,
        Length y,
        boolean turned,
        boolean pinned,
        Outcome outcome,
        String note) {

    /** What became of it. */
    public enum Outcome {
        PLANNED,
        PRINTED,
        SPOILED,
        /** Taken out of the run before it was printed. */
        DROPPED,
        /** Printed, and later printed again because the order came back. */
        MADE_AGAIN;

        public String textKey() {
            return "printing.outcome." + name();
        }
    }

    public Size sticker() {
        return finished.grownBy(overhang);
    }

    /** Sticker and label as they lie on the sheet. */
    public Size footprint() {
        Size upright = new Size(sticker().width(), sticker().height().plus(PrintMedium.LABEL));
        return turned ? upright.turned() : upright;
    }

    RunItem at(int onSheet, double xMm, double yMm, boolean isTurned) {
        return new RunItem(
                id,
                order,
                copy,
                look,
                finished,
                overhang,
                due,
                onSheet,
                Length.mm(xMm),
                Length.mm(yMm),
                isTurned,
                pinned,
                outcome,
                note);
    }

    RunItem pinned(boolean isPinned) {
        return new RunItem(
                id, order, copy, look, finished, overhang, due, sheet, x, y, turned, isPinned, outcome, note);
    }
}
