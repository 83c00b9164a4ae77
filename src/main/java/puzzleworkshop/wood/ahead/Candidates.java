package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import puzzleworkshop.wood.ahead.buying.BlankOrder;
import puzzleworkshop.wood.ahead.buying.Purchases;
import puzzleworkshop.wood.play.CutAt;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodDecision;
import puzzleworkshop.wood.play.WoodState;

/** What could be done in a period: ways to buy, each with the layings that lead to different racks. */
final class Candidates {

    /** A decision and the rack after it. */
    record Candidate(Purchases.Purchase purchase, List<CutAt> cuts, List<OpenBoard> after) {}

    private static final int OTHER_ORDERS = 40;

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
            these = these.isEmpty() ? inOtherOrders(state, purchase) : these;
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
                List<OpenBoard> boards = boards(state, purchase);
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

    /** Before more is bought for blanks that fit in no order of size, some orders by chance are tried; the same ones each time. */
    private static List<Candidate> inOtherOrders(WoodState state, Purchases.Purchase purchase) {
        List<Wanted> blanks = state.now().blanks();
        SplittableRandom random = new SplittableRandom(blanks.size());
        for (int i = 0; i < OTHER_ORDERS; i++) {
            int[] order = shuffled(blanks.size(), random);
            for (PlaceRule rule : PlaceRule.values()) {
                List<OpenBoard> boards = boards(state, purchase);
                List<CutAt> cuts = Laying.lay(boards, blanks, order, rule, state.turning(), null);
                if (cuts != null) {
                    return List.of(new Candidate(purchase, cuts, boards));
                }
            }
        }
        return List.of();
    }

    private static int[] shuffled(int count, SplittableRandom random) {
        int[] order = IntStream.range(0, count).toArray();
        for (int i = count - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            int swapped = order[i];
            order[i] = order[j];
            order[j] = swapped;
        }
        return order;
    }

    /** Another rule's decision as one of those that can be done; empty when it leaves a blank without a board. */
    static Optional<Candidate> of(WoodState state, WoodDecision decision) {
        if (decision.cuts().size() < state.now().blanks().size()) {
            return Optional.empty();
        }
        List<ForSale> bought =
                decision.bought().stream().map(state.now().offers()::get).toList();
        Purchases.Purchase purchase = new Purchases.Purchase(
                decision.bought(),
                bought.stream().mapToLong(ForSale::cost).sum(),
                bought.stream().mapToLong(ForSale::area).sum());
        List<OpenBoard> boards = boards(state, purchase);
        for (CutAt cut : decision.cuts()) {
            boards.stream()
                    .filter(board -> board.number() == cut.board())
                    .findFirst()
                    .orElseThrow()
                    .cut(cut.x(), cut.y(), cut.width(), cut.height());
        }
        return Optional.of(new Candidate(purchase, decision.cuts(), boards));
    }

    private static List<OpenBoard> boards(WoodState state, Purchases.Purchase purchase) {
        List<OpenBoard> boards = Laying.copy(state.rack());
        boards.addAll(purchase.boards(state.now().offers(), state.nextNumber()));
        return boards;
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
