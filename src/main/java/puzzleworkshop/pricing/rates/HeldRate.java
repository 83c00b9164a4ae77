package puzzleworkshop.pricing.rates;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * One figure as it holds from a day on.
 *
 * @param kind which figure
 * @param value in the unit of its kind
 * @param from the first day it holds
 * @param note where it was taken from, as the person wrote it; empty when nothing was written
 * @param starting whether it is the starting value, not set by the workshop
 */
public record HeldRate(RateKind kind, BigDecimal value, LocalDate from, String note, boolean starting) {

    private static final LocalDate FROM_THE_BEGINNING = LocalDate.of(2000, 1, 1);

    public static HeldRate starting(RateKind kind) {
        return new HeldRate(kind, kind.start(), FROM_THE_BEGINNING, "", true);
    }

    /** Where the figure comes from, for a cost line. */
    public Source source() {
        if (kind.isAtTheMachine() && !starting) {
            return Source.of(from, "pricing.source.machine", note);
        }
        if (starting) {
            return Source.of(from, "pricing.source.starting");
        }
        return note.isBlank() ? Source.of(from, "pricing.source.rate") : Source.of(from, "pricing.source.noted", note);
    }
}
