package puzzleworkshop.sheets;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.Money;
import puzzleworkshop.sheets.board.BoardFacts;

/**
 * A board or offcut in the rack.
 *
 * @param outline its shape, at the origin
 * @param cost what it carries
 * @param fromCut the cut it came from; empty when it was bought or found
 * @param enteredAt when it came into the rack
 * @param stateSince when its state last changed
 * @param reservation the living one, while reserved
 * @param version for changes by two people at a time
 */
public record Sheet(
        SheetId id,
        Outline outline,
        BoardFacts facts,
        Money cost,
        SheetState state,
        OptionalLong fromCut,
        Instant enteredAt,
        Instant stateSince,
        Optional<Reservation> reservation,
        boolean hasPhoto,
        long version) {

    public boolean isFree() {
        return state == SheetState.FREE;
    }
}
