package puzzleworkshop.sheets;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;

/**
 * A blank that was cut from a sheet.
 *
 * @param cost what the sheet carried: blank, offcuts and scrapped together
 * @param offcuts the sheets it left
 * @param undone true when it was a mistake and taken back
 */
public record Cut(
        long id,
        SheetId sheet,
        Optional<OrderRef> order,
        Placement placement,
        Size blank,
        Money cost,
        Money blankCost,
        Money offcutsCost,
        Money scrapped,
        List<SheetId> offcuts,
        String who,
        Instant at,
        boolean undone) {}
