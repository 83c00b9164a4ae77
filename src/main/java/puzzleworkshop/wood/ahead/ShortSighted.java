package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.wood.ahead.buying.BlankOrder;
import puzzleworkshop.wood.ahead.buying.Purchases;
import puzzleworkshop.wood.play.CutAt;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodDecision;
import puzzleworkshop.wood.play.WoodPolicy;
import puzzleworkshop.wood.play.WoodState;

/**
 * What is done without looking ahead: the cheapest boards that hold the blanks of the period, laid by one rule. The
 * peers that looking ahead is measured against.
 */
final class ShortSighted implements WoodPolicy {

    /** Lays the blanks of a period by some rule; null when they do not all fit. */
    interface Way {
        List<CutAt> lay(
                List<OpenBoard> boards, List<Wanted> blanks, int[] order, boolean turning, List<Integer> without);
    }

    private final Way way;

    private ShortSighted(Way way) {
        this.way = way;
    }

    /** Blanks on what leaves the smallest area. */
    static WoodPolicy nearest() {
        return new ShortSighted((boards, blanks, order, turning, without) ->
                Laying.lay(boards, blanks, order, PlaceRule.SMALLEST_REST, turning, without));
    }

    /** Blanks where the rule of least loss puts them, by a ladder of useful sizes. */
    static WoodPolicy leastLoss(LeastLoss ladder) {
        return new ShortSighted(ladder::lay);
    }

    @Override
    public WoodDecision decide(WoodState state) {
        Purchases purchases = new Purchases(state.now().offers());
        List<Wanted> blanks = state.now().blanks();
        long need = state.now().wantedArea()
                - state.rack().stream().mapToLong(OpenBoard::freeArea).sum();
        for (Purchases.Purchase purchase : purchases.ways()) {
            if (purchase.area() < need) {
                continue;
            }
            for (BlankOrder order : BlankOrder.values()) {
                List<OpenBoard> boards = with(state, purchase);
                List<CutAt> cuts = way.lay(boards, blanks, order.of(blanks), state.turning(), null);
                if (cuts != null) {
                    return new WoodDecision(purchase.offers(), cuts, List.of());
                }
            }
        }
        return asManyAsPossible(state, purchases);
    }

    /** Some blanks have no board whatever is bought: the cheapest purchase that leaves fewest without. */
    private WoodDecision asManyAsPossible(WoodState state, Purchases purchases) {
        WoodDecision best = null;
        int fewest = Integer.MAX_VALUE;
        for (Purchases.Purchase purchase : purchases.ways()) {
            List<Integer> without = new ArrayList<>();
            List<Wanted> blanks = state.now().blanks();
            List<CutAt> cuts =
                    way.lay(with(state, purchase), blanks, BlankOrder.AREA.of(blanks), state.turning(), without);
            if (without.size() < fewest) {
                fewest = without.size();
                best = new WoodDecision(purchase.offers(), cuts, List.of());
            }
        }
        return best;
    }

    private static List<OpenBoard> with(WoodState state, Purchases.Purchase purchase) {
        List<OpenBoard> boards = Laying.copy(state.rack());
        boards.addAll(purchase.boards(state.now().offers(), state.nextNumber()));
        return boards;
    }
}
