package puzzleworkshop.pricing.cost;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.pricing.Source;
import puzzleworkshop.pricing.rates.RateKind;

/**
 * What materials cost by the heap of receipts: the moving average of what was bought. Asked first; the rate table
 * answers where nothing was bought yet.
 */
@FunctionalInterface
public interface MaterialPrices {

    /** A price for one unit of the rate (a square metre, a millilitre, a piece) with its source. */
    record Known(Money perUnit, Source source) {}

    /** On a day: what was on the shelf by its end. */
    Optional<Known> of(RateKind kind, LocalDate day);

    /** The same, each asked once; for working out many prices in one go. */
    default MaterialPrices remembered() {
        Map<List<Object>, Optional<Known>> asked = new HashMap<>();
        return (kind, day) -> asked.computeIfAbsent(List.of(kind, day), question -> of(kind, day));
    }

    static MaterialPrices none() {
        return (kind, day) -> Optional.empty();
    }
}
