package puzzleworkshop.wood;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalInt;
import puzzleworkshop.measure.Refused;

/**
 * How a board that can be bought comes.
 *
 * @param offer its number among the boards that can be bought
 * @param deliveryWeeks from order to delivery, 0 (fetched at once) to 26; empty: as the rules say for all boards
 * @param cutFee what the dealer takes for a piece cut to size, beside its share of the board's price by area, in the
 *     currency of the board, at least 0; empty: whole boards only
 */
public record Dealing(long offer, OptionalInt deliveryWeeks, Optional<BigDecimal> cutFee) {

    private static final int MOST_WEEKS = 26;

    public Dealing {
        if (deliveryWeeks.isPresent() && (deliveryWeeks.getAsInt() < 0 || deliveryWeeks.getAsInt() > MOST_WEEKS)) {
            throw new Refused("wood.dealing.weeks");
        }
        if (cutFee.isPresent() && cutFee.get().signum() < 0) {
            throw new Refused("wood.dealing.fee");
        }
    }

    /** As long as nothing was said. */
    static Dealing usual(long offer) {
        return new Dealing(offer, OptionalInt.empty(), Optional.empty());
    }
}
