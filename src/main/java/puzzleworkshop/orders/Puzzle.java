package puzzleworkshop.orders;

import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;

/**
 * What is made: the pattern (size, grid, seed, style) and for whom it is meant.
 *
 * @param age for whom it is meant; decides the warning in the box
 * @param tray whether a tray (frame and backing) of the same size goes with it
 */
public record Puzzle(PatternSpec pattern, IntendedAge age, boolean tray) {

    public Size finished() {
        return pattern.size();
    }

    public int pieces() {
        return pattern.grid().pieces();
    }
}
