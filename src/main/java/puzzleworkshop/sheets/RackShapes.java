package puzzleworkshop.sheets;

import java.util.List;
import java.util.Set;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.runtime.VersionedCache;

/** Shapes of all free sheets at once, worked out once for each state of the rack. */
@Service
public class RackShapes {

    private record Question(String stamp, List<puzzleworkshop.measure.Size> rungs) {}

    private final SheetStore sheets;
    private final RackIndex index;
    private final VersionedCache<Question, List<Profile>> known = VersionedCache.ofMost(2);

    RackShapes(SheetStore sheets, RackIndex index) {
        this.sheets = sheets;
        this.index = index;
    }

    /** In no order that means something. */
    @Transactional(readOnly = true)
    public List<Profile> free(UsefulSizes ladder) {
        return known.get(
                new Question(sheets.stamp(), ladder.rungs()),
                () -> index.profiles(sheets.candidates(Set.of(SheetState.FREE)), ladder));
    }
}
