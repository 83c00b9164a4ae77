package puzzleworkshop.sheets;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.sheets.board.BlankWish;

/** How large the pieces in the rack are, worked out once for each state of the rack. */
@Service
public class RackShapes {

    private static final int MOST_KINDS = 32;

    private record Question(String stamp, BlankWish kind, Length slack, List<Size> rungs) {}

    private final SheetStore sheets;
    private final RackIndex index;
    private final VersionedCache<Question, List<Size>> known = VersionedCache.ofMost(MOST_KINDS);

    RackShapes(SheetStore sheets, RackIndex index) {
        this.sheets = sheets;
        this.index = index;
    }

    /**
     * How large each free sheet is that would do for the wish but for its size: a rectangle as it is, any other shape as the highest
     * rung that fits in it. Quick enough for an answer that somebody waits for; what gives no rung is left out. In no order that
     * means something.
     *
     * @param slack how far the thickness may be off
     */
    @Transactional(readOnly = true)
    public List<Size> atLeast(BlankWish kind, Length slack, UsefulSizes useful) {
        return known.get(
                new Question(sheets.stamp(), kind, slack, useful.rungs()),
                () -> index.profiles(sheets.candidates(kind, slack), useful).stream()
                        .filter(profile -> profile.rung() != UsefulSizes.SCRAP)
                        .map(profile -> profile.outline().isPlainRectangle()
                                ? profile.outline().bounds()
                                : useful.rung(profile.rung()))
                        .toList());
    }

    /**
     * The largest rectangle of each free sheet that would do for the wish but for its size; those too thin for any are left out. May
     * take some seconds in a rack of ragged boards. In no order that means something.
     */
    @Transactional(readOnly = true)
    public List<Size> free(BlankWish kind, Length slack) {
        return known.get(
                new Question(sheets.stamp(), kind, slack, List.of()),
                () -> index.largest(sheets.candidates(kind, slack)).stream()
                        .flatMap(Optional::stream)
                        .toList());
    }

    /** The largest rectangle of each sheet, in their order; none of one that is too thin. */
    public List<Optional<Size>> largest(List<Sheet> stock) {
        return index.largest(stock.stream()
                .map(sheet -> new SheetStore.Candidate(
                        sheet.id(),
                        OutlineText.write(sheet.outline()),
                        sheet.facts().grain()))
                .toList());
    }

    /** Another text as soon as any sheet has come, changed or gone. */
    @Transactional(readOnly = true)
    public String stamp() {
        return sheets.stamp();
    }

    /** How many boards and pieces lie in the rack, free or held. */
    @Transactional(readOnly = true)
    public int lying() {
        return sheets.lying();
    }
}
