package puzzleworkshop.delivery.sending;

import java.util.Optional;
import java.util.OptionalInt;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Sentence;

/**
 * The most a way takes; what is absent is not limited.
 *
 * @param heaviestGrams mass, not volumetric
 * @param lengthAndGirth longest side and girth together
 */
public record SendingLimits(OptionalInt heaviestGrams, Optional<Length> longest, Optional<Length> lengthAndGirth) {

    public static final SendingLimits NONE = new SendingLimits(OptionalInt.empty(), Optional.empty(), Optional.empty());

    /** Why a parcel is not taken; empty when it is. */
    public Optional<Sentence> refuses(String way, ParcelMeasure parcel) {
        if (heaviestGrams.isPresent() && parcel.grams() > heaviestGrams.getAsInt()) {
            return Optional.of(Sentence.of(
                    "delivery.limit.weight",
                    way,
                    Kilograms.of(heaviestGrams.getAsInt()),
                    Kilograms.of(parcel.grams())));
        }
        if (longest.isPresent() && parcel.longest().compareTo(longest.get()) > 0) {
            return Optional.of(Sentence.of("delivery.limit.longest", way, longest.get(), parcel.longest()));
        }
        if (lengthAndGirth.isPresent() && parcel.lengthAndGirth().compareTo(lengthAndGirth.get()) > 0) {
            return Optional.of(Sentence.of("delivery.limit.girth", way, lengthAndGirth.get(), parcel.lengthAndGirth()));
        }
        return Optional.empty();
    }
}
