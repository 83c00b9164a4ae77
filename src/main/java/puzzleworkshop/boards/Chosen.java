package puzzleworkshop.boards;

import java.util.Optional;
import puzzleworkshop.boards.BlankPlan.Part;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetId;

/**
 * One block of an order and where it is to be cut from.
 *
 * @param position from 1 on within the order
 * @param part what lies on it
 * @param sheet the sheet chosen; absent while a board is still to be bought
 * @param offer the board to buy; absent when a sheet gives the block
 * @param held whether the sheet is held for the order now
 * @param cut whether it was cut from that sheet, and is of use still
 */
public record Chosen(
        int position,
        Part part,
        int across,
        int down,
        Size size,
        Placement placement,
        Optional<SheetId> sheet,
        Optional<Long> offer,
        boolean held,
        boolean cut) {

    /** How many parts lie on it. */
    public int count() {
        return across * down;
    }

    public boolean mustBeBought() {
        return sheet.isEmpty();
    }

    Chosen standing(boolean isHeld, boolean isCut) {
        return new Chosen(position, part, across, down, size, placement, sheet, offer, isHeld, isCut);
    }
}
