package puzzleworkshop.wood;

import java.util.OptionalDouble;
import puzzleworkshop.measure.Size;

/**
 * A size of blank, as learned from orders and as the owner has corrected it.
 *
 * @param corrected blanks a week by the owner's word; empty: what was learned counts
 */
public record AskedSize(Demand.Learned learned, OptionalDouble corrected) {

    public Size size() {
        return learned.size();
    }

    /** What counts. */
    public double perWeek() {
        return corrected.orElse(learned.perWeek());
    }
}
