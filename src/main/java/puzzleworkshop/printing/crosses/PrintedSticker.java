package puzzleworkshop.printing.crosses;

import java.util.Optional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * A sticker as it was printed, or as it is planned to be.
 *
 * @param finished size of the cut puzzle
 * @param overhang print beyond it on every side
 * @param crosses on it; none when its run had none, or they did not fit its overhang
 */
public record PrintedSticker(Size finished, Length overhang, Optional<Crosses> crosses) {

    public PrintedSticker {
        crosses = crosses.filter(set -> set.fit(overhang));
    }
}
