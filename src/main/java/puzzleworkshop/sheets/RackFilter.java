package puzzleworkshop.sheets;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * Which sheets to show.
 *
 * @param text in number, place or note; empty: all
 * @param material id; empty: all
 * @param thickness nominal
 * @param fits only sheets that hold this size at some angle
 * @param states empty: all but withdrawn ones
 */
public record RackFilter(
        String text,
        Optional<String> material,
        Optional<Length> thickness,
        Optional<Size> fits,
        Set<SheetState> states) {

    /** Everything in the rack. */
    public static RackFilter inRack() {
        return new RackFilter(
                "",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                EnumSet.of(SheetState.FREE, SheetState.RESERVED));
    }

    /** Every sheet that was ever entered, used up ones too. */
    public static RackFilter everEntered() {
        return new RackFilter(
                "", Optional.empty(), Optional.empty(), Optional.empty(), EnumSet.allOf(SheetState.class));
    }
}
