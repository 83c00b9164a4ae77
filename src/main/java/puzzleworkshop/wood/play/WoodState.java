package puzzleworkshop.wood.play;

import java.util.List;

/**
 * All that a decision may know: nothing of later periods.
 *
 * @param periods how many there are in all
 * @param past the periods before this one
 * @param now this one
 * @param rack boards with something left, oldest first; not to be changed
 * @param nextNumber the number that the next board bought will have
 * @param paid in the periods before, blanks without a board included
 */
public record WoodState(
        int periods,
        boolean turning,
        int room,
        List<Wanted> usual,
        List<WoodPeriod> past,
        WoodPeriod now,
        List<OpenBoard> rack,
        int nextNumber,
        long paid) {

    /** Periods after this one. */
    public int left() {
        return periods - past.size() - 1;
    }
}
