package puzzleworkshop.delivery.sending;

import java.util.Optional;
import puzzleworkshop.measure.Confidential;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;

/**
 * One line of a carrier's price list: what a parcel up to a weight and a size costs.
 *
 * @param upToGrams the weight that counts, volumetric where the way weighs by volume
 * @param longest most of the longest side, then of the others; absent where the line does not say
 */
public record SendingPrice(
        int upToGrams,
        Optional<Length> longest,
        Optional<Length> middle,
        Optional<Length> shortest,
        Optional<Length> lengthAndGirth,
        Money price)
        implements Confidential<SendingPrice> {

    public SendingPrice {
        if (upToGrams <= 0 || price.isNegative()) {
            throw new IllegalArgumentException("A price line is up to a weight above zero and not below nothing");
        }
    }

    /** Carriers publish their prices, and whoever takes a parcel to the counter pays it. */
    @Override
    public SendingPrice withoutMoney() {
        return this;
    }

    boolean takes(ParcelMeasure parcel, double chargedGrams) {
        return chargedGrams <= upToGrams
                && within(longest, parcel.longest())
                && within(middle, parcel.middle())
                && within(shortest, parcel.shortest())
                && within(lengthAndGirth, parcel.lengthAndGirth());
    }

    private static boolean within(Optional<Length> most, Length side) {
        return most.map(limit -> side.compareTo(limit) <= 0).orElse(true);
    }
}
