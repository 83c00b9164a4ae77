package puzzleworkshop.printing.media;

import java.util.Optional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.supplies.SupplyId;

/**
 * A sticker sheet or roll that can be printed on.
 *
 * @param id empty while not yet kept
 * @param size of a sheet as it is fed; of a roll its width and the longest run
 * @param margin the printer cannot print, on every side
 * @param gap between two stickers with their labels, at least 3 mm: marks stand in it
 * @param sticker supply that is used up; empty for the usual sticker paper
 * @param laminate supply that is used up; empty for the usual laminate
 * @param usual offered first; one of all
 */
public record PrintMedium(
        Optional<Long> id,
        String name,
        Kind kind,
        Size size,
        Length margin,
        Length gap,
        Optional<SupplyId> sticker,
        Optional<SupplyId> laminate,
        boolean usual) {

    /** Cut sheets, or as long as needed. */
    public enum Kind {
        SHEET,
        ROLL
    }

    /** Height of the band below a sticker that carries order number and code. */
    public static final Length LABEL = Length.mm(8);

    /** Room that marks need beside a sticker, within the printable part of the sheet. */
    public static final Length MARKS = Length.mm(3);

    /** Whether a sticker with its label can lie on it at all, upright or turned. */
    public boolean takes(Size sticker) {
        return new Size(sticker.width(), sticker.height().plus(LABEL)).fitsUpright(room());
    }

    /** From the sheet's edge to the first sticker. */
    public Length inset() {
        return margin.plus(MARKS);
    }

    /** The part of the sheet on which stickers may lie. */
    public Size room() {
        return size.grownBy(inset().times(-1));
    }
}
