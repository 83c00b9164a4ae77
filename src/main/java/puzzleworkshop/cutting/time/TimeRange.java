package puzzleworkshop.cutting.time;

import puzzleworkshop.measure.Minutes;

/**
 * A time that is not known to the minute.
 *
 * @param low about one cut in ten is quicker
 * @param likely the middle
 * @param high about one cut in ten is slower: what to plan with
 */
public record TimeRange(Minutes low, Minutes likely, Minutes high) {

    public TimeRange {
        if (low.compareTo(likely) > 0 || likely.compareTo(high) > 0) {
            throw new IllegalArgumentException("A range runs from low over likely to high");
        }
    }
}
