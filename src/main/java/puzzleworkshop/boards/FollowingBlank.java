package puzzleworkshop.boards;

import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetId;

/**
 * A blank that waits for what a held sheet leaves.
 *
 * @param sheet held for another blank now
 * @param position of the blank within its order, from 1
 * @param placement on that sheet
 */
public record FollowingBlank(long id, SheetId sheet, OrderRef order, int position, Placement placement, Size blank) {}
