package puzzleworkshop.sheets;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.geometry.Profile;
import puzzleworkshop.geometry.UsefulSizes;

/** Keeps what was worked out about each sheet's shape, until the shape or the useful sizes change. */
final class RackIndex {

    private record Known(String outline, Profile profile) {}

    private final Map<SheetId, Known> known = new ConcurrentHashMap<>();
    private volatile UsefulSizes sizes;

    RackIndex(UsefulSizes sizes) {
        this.sizes = sizes;
    }

    UsefulSizes sizes() {
        return sizes;
    }

    void use(UsefulSizes newSizes) {
        if (!newSizes.rungs().equals(sizes.rungs())) {
            sizes = newSizes;
            known.clear();
        }
    }

    List<Profile> profiles(List<SheetStore.Candidate> candidates) {
        return candidates.parallelStream().map(this::profile).toList();
    }

    Profile profile(SheetStore.Candidate candidate) {
        Known found = known.get(candidate.id());
        if (found == null || !found.outline().equals(candidate.outline())) {
            found = new Known(candidate.outline(), Profile.of(OutlineText.readMended(candidate.outline()), sizes));
            known.put(candidate.id(), found);
        }
        return found.profile();
    }
}
