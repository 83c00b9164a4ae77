package puzzleworkshop.sheets.find;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.BestSheets;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetStore;
import puzzleworkshop.sheets.board.BlankWish;

/**
 * Sheet after sheet for many blanks of one kind of board, as the rack was when the search began. The rack is read once; for
 * each size a sheet is searched at most once, and a size that no sheet gave is given by none later on, because sheets are
 * only taken. Not for two threads at a time.
 */
public final class BlankSearch {

    private final BlankWish kind;
    private final List<SheetStore.Candidate> candidates;
    private final List<Profile> profiles;
    private final List<double[]> angles;
    private final UsefulSizes useful;
    private final Map<Size, BestSheets.Ranking> rankings = new HashMap<>();
    private final Set<Size> givenByNone = new HashSet<>();
    private final Set<SheetId> taken = new HashSet<>();

    BlankSearch(
            BlankWish kind,
            List<SheetStore.Candidate> candidates,
            List<Profile> profiles,
            List<double[]> angles,
            UsefulSizes useful) {
        this.kind = kind;
        this.candidates = candidates;
        this.profiles = profiles;
        this.angles = angles;
        this.useful = useful;
    }

    /** A blank that has its sheet; its place is made fine later, for all at once. */
    public record Found(Size size, int index, BestSheets.Ranked answer) {}

    /** The sheet that loses least by giving the size, taken by that; empty when none is left that does. */
    public Optional<Found> take(Size size) {
        if (givenByNone.contains(size)) {
            return Optional.empty();
        }
        Optional<Found> found = rankings.computeIfAbsent(size, s -> new BestSheets.Ranking(profiles, s, angles, useful))
                .best(index -> !taken.contains(candidates.get(index).id()))
                .map(answer -> new Found(size, answer.index(), answer));
        found.ifPresentOrElse(f -> taken.add(sheet(f)), () -> givenByNone.add(size));
        return found;
    }

    /** The sheet is used otherwise. */
    public void take(SheetId sheet) {
        taken.add(sheet);
    }

    /** The ladder by which it searches. */
    UsefulSizes useful() {
        return useful;
    }

    SheetId sheet(Found found) {
        return candidates.get(found.index()).id();
    }

    BlankWish wish(Found found) {
        return new BlankWish(
                found.size(), kind.materials(), kind.grades(), kind.thickness(), kind.mostBow(), kind.grain());
    }

    BestSheets.Ranked finest(Found found) {
        return BestSheets.finest(profiles.get(found.index()), found.size(), angles.get(found.index()), useful)
                .orElse(found.answer());
    }
}
