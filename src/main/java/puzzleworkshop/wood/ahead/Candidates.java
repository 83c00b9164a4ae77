package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import puzzleworkshop.wood.ahead.buying.BlankOrder;
import puzzleworkshop.wood.ahead.buying.Purchases;
import puzzleworkshop.wood.play.CutAt;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodState;

/** What could be done in a period: ways to buy, each with the layings that lead to different racks. */
final class Candidates {

    /** A decision and the rack after it. */
    record Candidate(Purchases.Purchase purchase, List<CutAt> cuts, List<OpenBoard> after) {}

    private Candidates() {}

    /** Each way to buy that holds the blanks, with its first layings. */
    static List<Candidate> ways(WoodState state, int mostWays, int layings) {
        List<Candidate> found = new ArrayList<>();
        int ways = 0;
        long need = state.now().wantedArea()
                - state.rack().stream().mapToLong(OpenBoard::freeArea).sum();
        for (Purchases.Purchase purchase : new Purchases(state.now().offers()).ways()) {
            if (purchase.area() < need) {
                continue;
            }
            List<Candidate> these = layings(state, purchase, layings);
            found.addAll(these);
            if (!these.isEmpty() && ++ways >= mostWays) {
                break;
            }
        }
        return found;
    }

    /** Layings that lead to different racks after one way to buy. */
    static List<Candidate> layings(WoodState state, Purchases.Purchase purchase, int most) {
        List<Candidate> found = new ArrayList<>();
        List<Wanted> blanks = state.now().blanks();
        Set<List<CutAt>> known = new HashSet<>();
        for (BlankOrder order : BlankOrder.values()) {
            for (PlaceRule rule : PlaceRule.values()) {
                List<OpenBoard> boards = Laying.copy(state.rack());
                boards.addAll(purchase.boards(state.now().offers(), state.nextNumber()));
                List<CutAt> cuts = Laying.lay(boards, blanks, order.of(blanks), rule, state.turning(), null);
                if (cuts != null && known.add(sorted(cuts))) {
                    found.add(new Candidate(purchase, cuts, boards));
                    if (found.size() >= most) {
                        return found;
                    }
                }
            }
        }
        return found;
    }

    private static List<CutAt> sorted(List<CutAt> cuts) {
        return cuts.stream()
                .map(cut -> new CutAt(0, cut.board(), cut.x(), cut.y(), cut.width(), cut.height()))
                .sorted(java.util.Comparator.comparingInt(CutAt::board)
                        .thenComparingInt(CutAt::x)
                        .thenComparingInt(CutAt::y))
                .toList();
    }
}
