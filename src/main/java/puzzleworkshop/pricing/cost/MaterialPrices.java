package puzzleworkshop.pricing.cost;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.pricing.rates.Source;

/**
 * What materials cost by the heap of receipts: the moving average of what was bought. Asked first; the rate table
 * answers where nothing was bought yet.
 */
@FunctionalInterface
public interface MaterialPrices {

    /**
     * A price for one unit of the rate (a square metre, a millilitre, a piece) with its source.
     *
     * @param sheet by which it is bought and used up; empty for what comes from a roll or is not known
     */
    record Known(Money perUnit, Source source, Optional<Size> sheet) {

        public Known(Money perUnit, Source source) {
            this(perUnit, source, Optional.empty());
        }
    }

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
