package puzzleworkshop.sheets;

import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.Size;

/**
 * A blank that waits for what a held sheet leaves.
 *
 * @param sheet held for another blank now
 * @param position of the blank within its order, from 1
 * @param placement on that sheet
 */
public record FollowingBlank(long id, SheetId sheet, long orderId, int position, Placement placement, Size blank) {}
