package puzzleworkshop.workshop;

import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * The trade's usual numbers as this workshop uses them (defaults: common practice).
 *
 * @param overhang print beyond the outer cut on every side, so that the cut always falls inside the print
 * @param holdDownMargin board beyond the sticker on every side, for tape or pins
 * @param stickShift how far a sticker may land off its mark when stuck by hand
 * @param stickTurnDegrees by how much it may be turned
 * @param sharpPpi effective resolution from which a picture is sharp
 * @param goodPpi from which it is good
 * @param softPpi from which it is soft; below it is refused unless the customer accepts it in writing
 * @param smallestPiece shortest side of a piece that is still offered
 * @param boardThickness nominal, offered first
 * @param smallestUseful what is left of a sheet counts as an offcut from this size on
 * @param bufferDays working days kept in hand before a promised date
 * @param quoteValidDays how long a quote holds
 * @param outlineLast cut the inner lines first and the outline last, so that the sheet stays put
 */
public record TradeNumbers(
        Length overhang,
        Length holdDownMargin,
        Length stickShift,
        double stickTurnDegrees,
        int sharpPpi,
        int goodPpi,
        int softPpi,
        Length smallestPiece,
        Length boardThickness,
        Size smallestUseful,
        int bufferDays,
        int quoteValidDays,
        boolean outlineLast) {

    /** The sticker: finished size and overhang all round. */
    public Size stickerFor(Size finished) {
        return finished.grownBy(overhang);
    }

    /** The board that must be whole and flat: finished size, overhang and margin all round (common practice). */
    public Size blankFor(Size finished) {
        return finished.grownBy(overhang.plus(holdDownMargin));
    }
}
