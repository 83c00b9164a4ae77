package puzzleworkshop.wood.asked;

import java.util.OptionalDouble;
import puzzleworkshop.measure.Size;

/**
 * A size of blank, as learned from orders and as the owner has corrected it.
 *
 * @param corrected blanks a week by the owner's word; empty: what was learned counts
 */
public record AskedSize(Demand.Learned learned, OptionalDouble corrected) {

    /** As it was learned. */
    public static AskedSize of(Demand.Learned learned) {
        return new AskedSize(learned, OptionalDouble.empty());
    }

    public Size size() {
        return learned.size();
    }

    /** What counts now. */
    public double perWeek() {
        return in(0);
    }

    /** What counts in a week to come, 0: this one; the owner's word counts in all of them. */
    public double in(int week) {
        return corrected.orElseGet(
                () -> learned.toCome().get(Math.min(week, learned.toCome().size() - 1)));
    }
}
