package puzzleworkshop.insights;

import java.time.Instant;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Size;

/**
 * An order that left the workshop, and what came of it.
 *
 * @param size longer side first
 * @param hands clocked where it was, else reckoned
 * @param laser recorded, else reckoned
 * @param mishaps how often something went wrong
 */
public record FinishedOrder(
        OrderId id,
        String number,
        String customer,
        Instant finished,
        int quantity,
        Size size,
        int pieces,
        Outcome outcome,
        Minutes hands,
        Minutes laser,
        int mishaps) {}
