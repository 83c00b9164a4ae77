package puzzleworkshop.artwork;

import java.util.Set;

/** Rooms that hold on to pictures say so; what nobody holds is cleared away after a while. */
public interface PictureUse {

    /** Those of the pictures asked for that are in use. */
    Set<PictureId> inUse(Set<PictureId> asked);
}
