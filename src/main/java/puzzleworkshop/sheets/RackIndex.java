package puzzleworkshop.sheets;

import java.util.List;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.geometry.Profile;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;

/** Keeps what was worked out about each shape in the rack; another shape or other useful sizes are another question. */
final class RackIndex {

    /** Some kilobytes each; sheets of one size share one. */
    private static final int MOST_SHAPES = 10_000;

    private record Shape(String outline, List<Size> useful) {}

    private final VersionedCache<Shape, Profile> known = VersionedCache.ofMost(MOST_SHAPES);

    List<Profile> profiles(List<SheetStore.Candidate> candidates, UsefulSizes sizes) {
        return candidates.parallelStream()
                .map(candidate -> profile(candidate, sizes))
                .toList();
    }

    Profile profile(SheetStore.Candidate candidate, UsefulSizes sizes) {
        return known.get(
                new Shape(candidate.outline(), sizes.rungs()),
                () -> Profile.of(OutlineText.readMended(candidate.outline()), sizes));
    }
}
