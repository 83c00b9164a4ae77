package puzzleworkshop.sheets.find;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.sheets.board.BlankWish;

/** What remainders are worth by what will be asked for; a room above answers. */
public interface RemainderWorth {

    /**
     * For boards that would do for one of the wishes, whatever their sizes; for all kinds of board together when there is no wish.
     *
     * @return empty as long as too little was asked for on these kinds to tell; then the fixed weights of the useful sizes count
     */
    Optional<Ladder> ladder(Collection<BlankWish> wishes);

    /**
     * @param sizes the rack's useful sizes with learned worths
     * @param weeks looked ahead
     * @param expected for each rung how many blanks that need just this rung are expected in those weeks
     * @param needed for each rung whether another piece of it is expected to save anything in those weeks
     * @param full whether the rack has no room left
     */
    record Ladder(UsefulSizes sizes, int weeks, List<Double> expected, List<Boolean> needed, boolean full) {

        public Ladder {
            expected = List.copyOf(expected);
            needed = List.copyOf(needed);
        }
    }
}
