package puzzleworkshop.planning;

import java.time.Instant;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.measure.OrderId;

/** What the bench knows about orders that are under way; the bench room answers. */
public interface StagesSoFar {

    /** Only orders about which there is something to say. */
    Map<OrderId, SoFar> of(Collection<OrderId> orders);

    /**
     * @param lastDone when the last stage was ticked; rests count from here
     * @param begun minutes already worked on the stage that is next, while its clock runs
     * @param needsFreshBoard whether it is made again from a stage at which what was cut before is of no use
     */
    record SoFar(Optional<Instant> lastDone, Optional<Integer> begun, boolean needsFreshBoard) {}
}
