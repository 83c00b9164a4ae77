package puzzleworkshop.sheets;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.springframework.stereotype.Component;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.BestSheets;
import puzzleworkshop.geometry.fit.LargestRectangle;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;

/** Keeps what was worked out about each shape in the rack; another shape or other useful sizes are another question. */
@Component
public class RackIndex {

    /** Some kilobytes each; sheets of one size share one. */
    private static final int MOST_SHAPES = 10_000;

    private record Shape(String outline, List<Size> useful) {}

    private final VersionedCache<Shape, Profile> known =
            VersionedCache.<Shape, Profile>ofMost(MOST_SHAPES).restingOnTheQuestion();
    private final VersionedCache<String, Optional<Size>> rectangles =
            VersionedCache.<String, Optional<Size>>ofMost(MOST_SHAPES).restingOnTheQuestion();

    /** Numbers of those among the candidates that hold the size at some angle. */
    Set<Long> holding(Size size, List<SheetStore.Candidate> candidates, UsefulSizes sizes) {
        List<Profile> profiles = profiles(candidates, sizes);
        return IntStream.range(0, candidates.size())
                .parallel()
                .filter(i -> BestSheets.holds(profiles.get(i), size))
                .mapToObj(i -> candidates.get(i).id().value())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    public List<Profile> profiles(List<SheetStore.Candidate> candidates, UsefulSizes sizes) {
        return candidates.parallelStream()
                .map(candidate -> profile(candidate, sizes))
                .toList();
    }

    /** The largest rectangle of each candidate, in their order; none of one that is too thin. */
    List<Optional<Size>> largest(List<SheetStore.Candidate> candidates) {
        return candidates.parallelStream()
                .map(candidate -> rectangles.get(candidate.outline(), () -> largest(candidate.outline())))
                .toList();
    }

    private static Optional<Size> largest(String text) {
        Outline outline = OutlineText.readMended(text);
        return outline.isPlainRectangle()
                ? Optional.of(outline.bounds())
                : LargestRectangle.in(outline).map(LargestRectangle::size);
    }

    private Profile profile(SheetStore.Candidate candidate, UsefulSizes sizes) {
        return known.get(
                        new Shape(candidate.outline(), sizes.rungs()),
                        () -> Profile.of(OutlineText.readMended(candidate.outline()), sizes))
                .valued(sizes);
    }
}
