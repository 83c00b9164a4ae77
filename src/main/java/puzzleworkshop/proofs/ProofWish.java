package puzzleworkshop.proofs;

import java.time.Instant;
import java.util.Optional;
import puzzleworkshop.artwork.PictureId;

/**
 * What a customer wants changed.
 *
 * @param picture that its places were marked on; none where none was marked
 * @param settledBy who saw to it, once somebody did
 */
public record ProofWish(
        long id, Instant at, CustomerWish wish, Optional<PictureId> picture, Optional<String> settledBy) {

    /** The longest that is kept, in characters. */
    public static final int LONGEST = 2000;
}
