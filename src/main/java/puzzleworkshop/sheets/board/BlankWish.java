package puzzleworkshop.sheets.board;

import java.util.EnumSet;
import java.util.Set;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * The blank somebody needs.
 *
 * @param size of the blank: finished size with overhang and margin
 * @param materials ids that will do; empty: any
 * @param grades that will do; empty: any
 * @param thickness wanted, nominal
 * @param mostBow the most bow allowed, held down; a sheet over it is not offered
 * @param grain how the picture must lie to the grain
 */
public record BlankWish(
        Size size, Set<String> materials, Set<Grade> grades, Length thickness, Length mostBow, GrainWish grain) {

    /** How the blank must lie to the grain. */
    public enum GrainWish {
        /** At any angle. */
        ANY,
        /** With or across the grain, never aslant. */
        SQUARE,
        /** Its width along the grain. */
        WIDTH_ALONG,
        /** Its height along the grain. */
        HEIGHT_ALONG
    }

    public BlankWish {
        materials = Set.copyOf(materials);
        grades = grades.isEmpty() ? Set.of() : Set.copyOf(EnumSet.copyOf(grades));
    }

    /** Any material and grade, bow up to 1 mm (common practice), any angle. */
    public static BlankWish of(Size blank, Length thickness) {
        return new BlankWish(blank, Set.of(), Set.of(), thickness, Length.mm(1), GrainWish.ANY);
    }

    public BlankWish withGrain(GrainWish wanted) {
        return new BlankWish(size, materials, grades, thickness, mostBow, wanted);
    }
}
