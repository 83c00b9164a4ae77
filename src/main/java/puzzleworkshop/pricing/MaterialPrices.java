package puzzleworkshop.pricing;

import java.util.Optional;
import puzzleworkshop.measure.Money;

/**
 * What materials cost by the heap of receipts: the moving average of what was bought. Asked first; the rate table
 * answers where nothing was bought yet.
 */
@FunctionalInterface
interface MaterialPrices {

    /** A price for one unit of the rate (a square metre, a millilitre, a piece) with its source. */
    record Known(Money perUnit, Source source) {}

    Optional<Known> of(RateKind kind);

    static MaterialPrices none() {
        return kind -> Optional.empty();
    }
}
