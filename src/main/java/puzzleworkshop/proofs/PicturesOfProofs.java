package puzzleworkshop.proofs;

import java.time.Instant;
import java.util.Set;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.PictureUse;

/** A picture that was approved is kept, even when the order shows another by now. */
@Component
class PicturesOfProofs implements PictureUse {

    private final ProofStore store;

    PicturesOfProofs(ProofStore store) {
        this.store = store;
    }

    @Override
    public Set<PictureId> inUse(Set<PictureId> asked) {
        return Set.copyOf(store.holding(asked));
    }

    /** What an order shows now, its room answers for; what was approved and replaced is kept for its proof alone. */
    @Override
    public Set<PictureId> needingOriginal(Set<PictureId> asked, Instant since) {
        return Set.copyOf(store.approvedSince(asked, since));
    }
}
