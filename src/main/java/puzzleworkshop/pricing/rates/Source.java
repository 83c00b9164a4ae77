package puzzleworkshop.pricing.rates;

import java.time.LocalDate;
import puzzleworkshop.measure.Sentence;

/**
 * Where a figure comes from.
 *
 * @param says one sentence for the screen
 * @param holdsFrom the day from which the figure holds
 */
public record Source(Sentence says, LocalDate holdsFrom) {

    public static Source of(LocalDate holdsFrom, String key, Object... arguments) {
        return new Source(Sentence.of(key, arguments), holdsFrom);
    }
}
