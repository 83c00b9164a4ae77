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

    public boolean allowsMaterial(String material) {
        return materials.isEmpty() || materials.contains(material);
    }

    public boolean allowsGrade(Grade grade) {
        return grades.isEmpty() || grades.contains(grade);
    }

    /** @param slack by how much a board may be thicker or thinner than nominal */
    public boolean allowsThickness(Length measured, Length slack) {
        return Math.abs(measured.mm() - thickness.mm()) <= slack.mm() + 1e-9;
    }

    /** Whether a board of this kind would do. */
    public boolean allows(String material, Grade grade, Length measured, Length slack) {
        return allowsMaterial(material) && allowsGrade(grade) && allowsThickness(measured, slack);
    }

    /** The angles at which the blank may lie on a sheet with this grain; null: any. */
    public double[] angles(Grain board) {
        if (grain == GrainWish.ANY || board == Grain.NONE) {
            return null;
        }
        double along = board == Grain.ALONG_WIDTH ? 0 : 90;
        return switch (grain) {
            case WIDTH_ALONG -> new double[] {along};
            case HEIGHT_ALONG -> new double[] {90 - along};
            default -> new double[] {0, 90};
        };
    }
}
