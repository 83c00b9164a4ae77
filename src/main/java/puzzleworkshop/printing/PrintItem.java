package puzzleworkshop.printing;

import java.time.LocalDate;
import java.util.Optional;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;

/**
 * An order whose approved picture waits to be printed.
 *
 * @param orderId the order
 * @param orderNumber as people read it
 * @param quantity how many puzzles, so how many prints, at least 1
 * @param finished size of the cut puzzle
 * @param overhang print beyond the finished size on every side
 * @param due day promised, when one is
 */
public record PrintItem(
        OrderRef order,
        int quantity,
        Size finished,
        Length overhang,
        Optional<LocalDate> due,
        PictureId picture,
        Crop crop) {

    /** The print: finished size and overhang all round. */
    public Size sticker() {
        return finished.grownBy(overhang);
    }

    /** What was approved, as a text that changes when the picture or its crop does. */
    public String look() {
        return picture + " " + crop;
    }
}
