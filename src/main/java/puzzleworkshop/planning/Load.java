package puzzleworkshop.planning;

import java.time.LocalDate;
import puzzleworkshop.workshop.Stage;

/**
 * What one day holds for a resource, in minutes.
 *
 * @param planned laid on it by the plan, never more than its capacity
 * @param needed what would have to be done on this day at the latest for all promises to hold; what should have been
 *     done before counts for today. May exceed the capacity: then something gives.
 * @param capacity open minutes; for today what is left of it; for hands those of all people
 */
public record Load(LocalDate day, Stage.Resource resource, int planned, int needed, int capacity) {

    public boolean isOver() {
        return needed > capacity;
    }

    public Load plus(Load other) {
        return new Load(
                day, resource, planned + other.planned, needed + other.needed, capacity + other.capacity);
    }
}
