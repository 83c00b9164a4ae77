package puzzleworkshop.artwork;

import java.time.Instant;
import java.util.Set;

/** Rooms that hold on to pictures say so; what nobody holds is cleared away after a while. */
public interface PictureUse {

    /** Those of the pictures asked for that are in use. */
    Set<PictureId> inUse(Set<PictureId> asked);

    /**
     * Those whose original may still be printed from: what they are for is not done with, or was done with since then. Of
     * the others the smaller copies are enough.
     */
    Set<PictureId> needingOriginal(Set<PictureId> asked, Instant since);
}
