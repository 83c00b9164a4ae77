package puzzleworkshop.printing;

import java.util.List;
import puzzleworkshop.measure.OrderId;

/**
 * A run came out of the printer; told within its transaction.
 *
 * @param complete orders that now have all their prints, so that they go on
 */
public record RunPrinted(long run, List<OrderId> complete, String who) {

    public RunPrinted {
        complete = List.copyOf(complete);
    }
}
