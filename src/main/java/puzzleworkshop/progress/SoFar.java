package puzzleworkshop.progress;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.workshop.Stage;

/**
 * How far an order has come.
 *
 * @param done when each stage was last ticked; rests count from here
 * @param begun minutes already worked on the stage that is next, while its clock runs
 * @param needsFreshBoard whether it is made again from a stage at which what was cut before is of no use
 */
public record SoFar(Map<Stage, Instant> done, Optional<Integer> begun, boolean needsFreshBoard) {}
