package puzzleworkshop.progress;

import java.time.Instant;
import java.util.Optional;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.workshop.Stage;

/**
 * A stage that was done.
 *
 * @param attempt 1 for the first time, more when it was made again
 * @param device on which it was ticked, as the browser names itself; may be empty
 * @param minutes by the bench's clock, absent when none ran
 * @param undone true when it was a mistake and taken back
 */
public record Tick(
        long id,
        OrderId order,
        Stage stage,
        int attempt,
        Instant at,
        String who,
        String device,
        Optional<Minutes> minutes,
        boolean undone) {}
