package puzzleworkshop.sheets;

import java.time.Instant;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;

/**
 * A sheet held for an order.
 *
 * @param blank size that will be cut from it, its width along the placement's angle
 */
public record Reservation(
        long id, SheetId sheet, OrderRef order, Placement placement, Size blank, String who, Instant reservedAt) {}
