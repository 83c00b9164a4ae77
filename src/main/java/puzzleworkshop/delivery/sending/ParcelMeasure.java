package puzzleworkshop.delivery.sending;

import java.util.Arrays;
import puzzleworkshop.measure.Length;

/**
 * What a carrier asks of a parcel: its mass and its three outer sides.
 *
 * @param grams above zero
 * @param longest the longest side, then the others
 */
public record ParcelMeasure(double grams, Length longest, Length middle, Length shortest) {

    private static final double GRAMS_A_KILOGRAM = 1000;
    private static final double MM3_A_CM3 = 1000;

    public ParcelMeasure {
        if (!(grams > 0) || !(shortest.mm() > 0)) {
            throw new IllegalArgumentException("A parcel of " + grams + " g, " + shortest.mm() + " mm at its thinnest");
        }
        if (longest.mm() < middle.mm() || middle.mm() < shortest.mm()) {
            throw new IllegalArgumentException("The sides of a parcel go from the longest to the shortest");
        }
    }

    /** With the sides in any order. */
    public static ParcelMeasure of(double grams, Length a, Length b, Length c) {
        double[] sides = {a.mm(), b.mm(), c.mm()};
        Arrays.sort(sides);
        return new ParcelMeasure(grams, Length.mm(sides[2]), Length.mm(sides[1]), Length.mm(sides[0]));
    }

    /** Around the parcel across its longest side. */
    public Length girth() {
        return Length.mm(2 * (middle.mm() + shortest.mm()));
    }

    /** The longest side and the girth together, as carriers limit it (common rule). */
    public Length lengthAndGirth() {
        return longest.plus(girth());
    }

    /**
     * What counts where a carrier weighs by volume as well: the greater of mass and volume / divisor.
     *
     * @param divisor cubic centimetres that count as one kilogram (5000 and 6000 are common)
     */
    public double chargedGrams(int divisor) {
        return Math.max(grams, volumetricGrams(divisor));
    }

    public double volumetricGrams(int divisor) {
        double cm3 = longest.mm() * middle.mm() * shortest.mm() / MM3_A_CM3;
        return cm3 / divisor * GRAMS_A_KILOGRAM;
    }
}
