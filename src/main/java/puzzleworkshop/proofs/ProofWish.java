package puzzleworkshop.proofs;

import java.time.Instant;
import java.util.Optional;

/**
 * What a customer wants changed, in their words.
 *
 * @param settledBy who saw to it, once somebody did
 */
public record ProofWish(long id, Instant at, String wish, Optional<String> settledBy) {

    /** The longest that is kept, in characters. */
    public static final int LONGEST = 2000;
}
