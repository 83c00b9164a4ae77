package puzzleworkshop.pattern.mesh;

import org.springframework.stereotype.Component;
import puzzleworkshop.cutfiles.writing.CutHeat;
import puzzleworkshop.cutfiles.writing.CutPace;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceSizes;
import puzzleworkshop.runtime.VersionedCache;

/**
 * Patterns made lately, kept at hand: lists and cards draw the same orders again and again, and the same spec always
 * gives the same pattern.
 */
@Component
public class PatternCache {

    /** An ordinary puzzle takes about 100 kB for its 200 pieces: some 20 MB in all. */
    private static final int MOST_PIECES_KEPT = 40_000;

    private static final int MOST_HEATS_KEPT = 2_000;
    private static final int MOST_SIZES_KEPT = 2_000;

    private final VersionedCache<PatternSpec, CutPattern> kept = VersionedCache.<PatternSpec, CutPattern>ofWeight(
                    MOST_PIECES_KEPT, pattern -> pattern.pieces().size())
            .restingOnTheQuestion();
    private final VersionedCache<InOrder, Ordered> plans = VersionedCache.<InOrder, Ordered>ofWeight(
                    MOST_PIECES_KEPT, Ordered::pieces)
            .restingOnTheQuestion();

    private final VersionedCache<InOrder, CutHeat> heats = VersionedCache.<InOrder, CutHeat>ofWeight(
                    MOST_HEATS_KEPT, heat -> 1)
            .restingOnTheQuestion();

    private final VersionedCache<PatternSpec, PieceSizes> sizes = VersionedCache.<PatternSpec, PieceSizes>ofWeight(
                    MOST_SIZES_KEPT, of -> 1)
            .restingOnTheQuestion();

    private record InOrder(PatternSpec spec, CutPlan.Sequence sequence, CutPace pace) {}

    private record Ordered(CutPlan plan, int pieces) {}

    /**
     * The pattern of a spec, made now or taken from the shelf.
     *
     * @throws puzzleworkshop.measure.Refused as {@link PatternMaker#make}
     */
    public CutPattern of(PatternSpec spec) {
        return kept.get(spec, () -> PatternMaker.make(spec));
    }

    /**
     * How large its pieces are.
     *
     * @throws puzzleworkshop.measure.Refused as {@link PatternMaker#make}
     */
    public PieceSizes sizes(PatternSpec spec) {
        return sizes.get(spec, () -> PieceSizes.of(of(spec)));
    }

    /**
     * Its lines in cutting order at the pace of a job, which take longer to put in order than to draw.
     *
     * @throws puzzleworkshop.measure.Refused as {@link PatternMaker#make}
     */
    public CutPlan plan(PatternSpec spec, CutPlan.Sequence sequence, CutPace pace) {
        return plans.get(new InOrder(spec, sequence, pace), () -> {
                    CutPattern pattern = of(spec);
                    return new Ordered(
                            pattern.plan(sequence, pace), pattern.pieces().size());
                })
                .plan();
    }

    /** How warm the board is where the beam arrives when it is cut in that order. */
    public CutHeat heat(PatternSpec spec, CutPlan.Sequence sequence, CutPace pace) {
        return heats.get(
                new InOrder(spec, sequence, pace),
                () -> CutHeat.of(plan(spec, sequence, pace).inOrder(), pace));
    }
}
