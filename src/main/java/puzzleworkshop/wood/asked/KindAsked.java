package puzzleworkshop.wood.asked;

import java.util.OptionalDouble;

/**
 * A kind of board that blanks are asked for on.
 *
 * @param learned of all its blanks together; its size means nothing
 * @param corrected blanks a week by the owner's word; empty: what was learned counts
 */
public record KindAsked(BoardKindAsked kind, Demand.Learned learned, OptionalDouble corrected) {

    /** What counts now. */
    public double perWeek() {
        return corrected.orElseGet(learned::perWeek);
    }
}
