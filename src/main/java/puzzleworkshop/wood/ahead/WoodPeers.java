package puzzleworkshop.wood.ahead;

import java.util.Comparator;
import java.util.List;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Size;
import puzzleworkshop.wood.play.Futures;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodPolicy;

/** The ways to decide that are measured side by side. All lay blanks by the same packer. */
public final class WoodPeers {

    private static final int PLAYS = 6_000;
    private static final int PLAYS_OF_WEEKS = 1_500;
    private static final int LONGEST = 12;
    private static final int WEEKS_AHEAD = 4;
    private static final WoodPolicy TODAY =
            state -> today(state.usual(), state.turning()).decide(state);

    private WoodPeers() {}

    /** What people do by hand: the cheapest boards that hold the period's blanks, blanks on what leaves the smallest area. */
    public static WoodPolicy nearest() {
        return ShortSighted.nearest();
    }

    /** The rule before looking ahead: cheapest boards, then least loss by the ladder of usual sizes. */
    public static WoodPolicy today(WoodCase woodCase) {
        return today(woodCase.usual(), woodCase.turning());
    }

    private static WoodPolicy today(List<Wanted> usual, boolean turning) {
        return ShortSighted.leastLoss(new LeastLoss(ladder(usual), turning));
    }

    /** Looks ahead over all periods; learns boards and blanks from what was seen. */
    public static WoodPolicy lookAhead() {
        return lookAhead(new SeenFutures(), 1);
    }

    /** Looks ahead over all periods with another teacher, beside an account of the rule before. */
    public static WoodPolicy lookAhead(Futures futures, long seed) {
        return new LookAhead(
                futures, seed, LONGEST, PLAYS, List.of(new Thrifty(0, PlaceRule.FULLEST_BOARD)), TODAY, true);
    }

    /** Looks some weeks ahead; the dealers always offer the same boards. */
    public static WoodPolicy lookWeeksAhead(long seed) {
        return new LookAhead(
                new StandingFutures(),
                seed,
                WEEKS_AHEAD,
                PLAYS_OF_WEEKS,
                List.of(new Thrifty(0, PlaceRule.FULLEST_BOARD)),
                TODAY,
                false);
    }

    /** The same search, told the truth about the periods to come; for cases whose rack has no room for a plan of a year. */
    public static WoodPolicy knownAhead(WoodCase woodCase) {
        Futures truth = (state, periods, random) ->
                woodCase.periods().subList(state.past().size() + 1, state.past().size() + 1 + periods);
        return new LookAhead(
                truth,
                1,
                WEEKS_AHEAD + 2,
                200,
                List.of(new Thrifty(0, PlaceRule.FULLEST_BOARD), new Thrifty(1, PlaceRule.FULLEST_BOARD)),
                TODAY,
                false);
    }

    private static UsefulSizes ladder(List<Wanted> usual) {
        List<Size> sizes =
                usual.stream().map(size -> Size.mm(size.width(), size.height())).toList();
        Size smallest = sizes.stream().min(Comparator.comparing(Size::area)).orElse(Size.mm(1, 1));
        return new UsefulSizes(smallest, sizes);
    }
}
