package puzzleworkshop.delivery.boxes;

import java.util.Arrays;
import java.util.Optional;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.measure.Length;
import puzzleworkshop.supplies.SupplyItem;

/**
 * A box or bag among the supplies, with its inside.
 *
 * @param item on the shelf
 * @param longest inner side, then the others
 * @param wall thickness of its walls
 * @param emptyGrams its own mass
 * @param factor room that loose pieces take in it as a multiple of their own volume; absent until measured
 */
public record Box(
        SupplyItem item,
        Length longest,
        Length middle,
        Length shortest,
        Length wall,
        double emptyGrams,
        Optional<Double> factor) {

    /** While a box was not measured: loose flat pieces fill about two fifths of the room they take (common practice). */
    public static final double USUAL_FACTOR = 2.5;

    /** With the sides in any order. */
    public static Box of(
            SupplyItem item, Length a, Length b, Length c, Length wall, double emptyGrams, Optional<Double> factor) {
        double[] sides = {a.mm(), b.mm(), c.mm()};
        Arrays.sort(sides);
        return new Box(item, Length.mm(sides[2]), Length.mm(sides[1]), Length.mm(sides[0]), wall, emptyGrams, factor);
    }

    public double volumeMm3() {
        return longest.mm() * middle.mm() * shortest.mm();
    }

    public double factorUsed() {
        return factor.orElse(USUAL_FACTOR);
    }

    /** Whether it takes one puzzle. */
    public boolean takes(Contents contents) {
        return holds(contents.stiffest()) && contents.solidMm3() * (contents.loose() ? factorUsed() : 1) <= volumeMm3();
    }

    /** Whether something stiff with these sides, longest first, lies in it with its edges along its own. */
    private boolean holds(double[] sides) {
        return sides[0] <= longest.mm() && sides[1] <= middle.mm() && sides[2] <= shortest.mm();
    }

    /** What the box measures and weighs outside, with something in it. */
    public ParcelMeasure outside(double contentGrams) {
        Length walls = wall.times(2);
        return new ParcelMeasure(
                emptyGrams + contentGrams, longest.plus(walls), middle.plus(walls), shortest.plus(walls));
    }

    /**
     * The packing factor as it is measured once: the pieces of a known puzzle poured in and levelled.
     *
     * @param baseMm2 of the box as it stands
     * @param filled how high the pieces stand in it
     * @param solidMm3 of the pieces themselves
     */
    public static double measured(double baseMm2, Length filled, double solidMm3) {
        return baseMm2 * filled.mm() / solidMm3;
    }
}
