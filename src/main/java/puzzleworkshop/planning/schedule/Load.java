package puzzleworkshop.planning.schedule;

import java.time.LocalDate;
import puzzleworkshop.workshop.Stage;

/**
 * What one day holds for a resource, in minutes.
 *
 * @param planned laid on it by the plan, never more than its capacity
 * @param needed what would have to be done on this day at the latest for all promises to hold; what should have been
 *     done before counts for today
 * @param capacity open minutes; for today what is left of it; for hands those of all people
 * @param missing of what is needed by the end of this day, the part for which neither this day nor those before it have
 *     room, beyond what was missing the day before: then something gives
 */
public record Load(LocalDate day, Stage.Resource resource, int planned, int needed, int capacity, int missing) {

    public boolean isOver() {
        return missing > 0;
    }

    public Load plus(Load other) {
        return new Load(
                day,
                resource,
                planned + other.planned,
                needed + other.needed,
                capacity + other.capacity,
                missing + other.missing);
    }
}
