package puzzleworkshop.cutting.jobs;

import java.time.Instant;

/**
 * An item of the checklist, done or skipped.
 *
 * @param item which
 * @param done true when it was looked at and is so; false when it was skipped
 * @param reason why it was skipped, in words; empty when done
 * @param by who
 * @param at when
 */
public record CheckAnswer(CheckItem item, boolean done, String reason, String by, Instant at) {

    /** Fewer letters than this are no reason. */
    public static final int SHORTEST_REASON = 10;
}
