package puzzleworkshop.wood.play;

import java.util.List;

/**
 * Several periods one after the other.
 *
 * @param turning whether blanks may lie turned by 90°
 * @param room how many boards with something left the rack holds at the end of a period; 0: any number
 * @param usual sizes that come up, known from the start
 */
public record WoodCase(String name, boolean turning, int room, List<Wanted> usual, List<WoodPeriod> periods) {

    public WoodCase {
        usual = List.copyOf(usual);
        periods = List.copyOf(periods);
    }
}
