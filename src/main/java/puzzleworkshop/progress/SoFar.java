package puzzleworkshop.progress;

import java.time.Instant;
import java.util.Optional;

/**
 * How far an order has come.
 *
 * @param lastDone when the last stage was ticked; rests count from here
 * @param begun minutes already worked on the stage that is next, while its clock runs
 * @param needsFreshBoard whether it is made again from a stage at which what was cut before is of no use
 */
public record SoFar(Optional<Instant> lastDone, Optional<Integer> begun, boolean needsFreshBoard) {}
