package puzzleworkshop.bench;

import java.time.Instant;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.workshop.Stage;

/**
 * Told after something at the bench is safe in the database: a tick, one taken back, or work sent back.
 *
 * @param stage at which it happened
 */
public record Ticked(OrderId order, Stage stage, Kind kind, Instant at, String who) implements Change {

    /** What happened. */
    public enum Kind {
        DONE,
        UNDONE,
        WENT_WRONG,
        CLOCK
    }
}
