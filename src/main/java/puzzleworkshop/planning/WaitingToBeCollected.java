package puzzleworkshop.planning;

import java.util.Set;
import puzzleworkshop.measure.OrderId;

/**
 * Orders that are packed and whose customers may come for them: the workshop has done its part, so they are due on no day and
 * nobody is told that they are late. Answered by the room that has the parcels.
 */
public interface WaitingToBeCollected {

    Set<OrderId> orders();
}
