package puzzleworkshop.wood.ahead;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodDecision;
import puzzleworkshop.wood.play.WoodPolicy;
import puzzleworkshop.wood.play.WoodState;

/**
 * The rule by which the workshop's sheets are proposed: each blank where least is lost of what remainders are worth by the
 * demand learned so far ({@link LearnedWorth}), on the cheapest boards that hold the period's blanks.
 */
public final class ByLearnedWorth implements WoodPolicy {

    private final UsefulSizes useful;
    private final Function<WoodState, Optional<List<LearnedWorth.Asked>>> learned;
    private final Function<double[], double[]> inSteps;
    private final int weeks;
    private final long seed;

    /**
     * @param learned what is asked for by the periods before; empty: too little was seen, the fixed weights count
     * @param inSteps how worths are rounded; never falling
     */
    public ByLearnedWorth(
            UsefulSizes useful,
            Function<WoodState, Optional<List<LearnedWorth.Asked>>> learned,
            Function<double[], double[]> inSteps,
            int weeks,
            long seed) {
        this.useful = useful;
        this.learned = learned;
        this.inSteps = inSteps;
        this.weeks = weeks;
        this.seed = seed;
    }

    @Override
    public WoodDecision decide(WoodState state) {
        UsefulSizes ladder =
                learned.apply(state).map(asked -> ladder(state, asked)).orElse(useful);
        return ShortSighted.leastLoss(new LeastLoss(ladder, state.turning())).decide(state);
    }

    private UsefulSizes ladder(WoodState state, List<LearnedWorth.Asked> asked) {
        List<Wanted> rungs = useful.rungs().stream()
                .map(size -> new Wanted((int) Math.ceil(size.longerSide().mm()), (int)
                        Math.ceil(size.shorterSide().mm())))
                .toList();
        List<Wanted> pieces = state.rack().stream()
                .map(ByLearnedWorth::largest)
                .filter(Objects::nonNull)
                .toList();
        List<ForSale> offers = state.now().offers();
        return useful.worth(inSteps.apply(LearnedWorth.of(rungs, pieces, asked, offers, weeks, state.room(), seed)));
    }

    private static Wanted largest(OpenBoard board) {
        return IntStream.range(0, board.rooms())
                .boxed()
                .max(Comparator.comparingLong(board::roomArea))
                .map(room -> new Wanted(
                        Math.max(board.roomWidth(room), board.roomHeight(room)),
                        Math.min(board.roomWidth(room), board.roomHeight(room))))
                .orElse(null);
    }

    /** Rounded to steps, at least the least: as worths are told to the search for sheets. */
    public static double[] inSteps(double[] worth, double step, double least) {
        return Arrays.stream(worth)
                .map(w -> Math.max(least, Math.round(w / step) * step))
                .toArray();
    }
}
