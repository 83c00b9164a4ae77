package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import puzzleworkshop.wood.ahead.buying.BlankOrder;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodDecision;
import puzzleworkshop.wood.play.WoodPeriod;

/**
 * What could have been done with all periods known: the cheapest set of boards found whose wood holds every blank in its
 * period, laid by the same quick rules. A search, so not surely the least; the peer that shows what knowing would be worth.
 *
 * <p>From a set that does, some boards are given back and others taken, the cheaper kept (iterated local search: Lourenço,
 * Martin and Stützle 2003). Bounded by tries, seeded.
 */
public final class KnownAhead {

    private record Board(int period, int offer, ForSale board) {}

    private final WoodCase woodCase;
    private final List<Board> boards = new ArrayList<>();
    private final long[] asked;
    private final int[][][] orders;
    private final SplittableRandom random;

    private KnownAhead(WoodCase woodCase, long seed) {
        this.woodCase = woodCase;
        this.random = new SplittableRandom(seed);
        List<WoodPeriod> periods = woodCase.periods();
        asked = new long[periods.size()];
        orders = new int[periods.size()][BlankOrder.values().length][];
        for (int t = 0; t < periods.size(); t++) {
            asked[t] = periods.get(t).wantedArea();
            List<Wanted> blanks = periods.get(t).blanks();
            for (BlankOrder order : BlankOrder.values()) {
                orders[t][order.ordinal()] = order.of(blanks);
            }
            for (int i = 0; i < periods.get(t).offers().size(); i++) {
                boards.add(new Board(t, i, periods.get(t).offers().get(i)));
            }
        }
    }

    /**
     * @param starts decisions of whole plays to start from
     * @return the cost of the best found; empty when no start serves every blank and none was found
     */
    public static java.util.OptionalLong leastCost(
            WoodCase woodCase, List<List<WoodDecision>> starts, int tries, long seed) {
        KnownAhead search = new KnownAhead(woodCase, seed);
        boolean[] best = new boolean[search.boards.size()];
        Arrays.fill(best, true);
        if (!search.holds(best)) {
            best = null;
        }
        long known = best == null ? Long.MAX_VALUE : search.cost(best);
        for (List<WoodDecision> start : starts) {
            boolean[] set = search.set(start);
            if (search.cost(set) < known && search.allServed(start)) {
                best = set;
                known = search.cost(set);
            }
        }
        return best == null ? java.util.OptionalLong.empty() : java.util.OptionalLong.of(search.improve(best, tries));
    }

    private boolean allServed(List<WoodDecision> plays) {
        for (int t = 0; t < plays.size(); t++) {
            if (plays.get(t).cuts().size() < woodCase.periods().get(t).blanks().size()) {
                return false;
            }
        }
        return true;
    }

    private boolean[] set(List<WoodDecision> plays) {
        boolean[] set = new boolean[boards.size()];
        for (int i = 0; i < set.length; i++) {
            set[i] = plays.get(boards.get(i).period())
                    .bought()
                    .contains(boards.get(i).offer());
        }
        return set;
    }

    private long improve(boolean[] start, int tries) {
        boolean[] best = start;
        long least = cost(best);
        java.util.Set<String> refused = new java.util.HashSet<>();
        for (int i = 0; i < tries; i++) {
            boolean[] next = changed(best);
            long cost = cost(next);
            if (cost >= least || !enough(next) || !refused.add(Arrays.toString(next))) {
                continue;
            }
            if (holds(next)) {
                best = next;
                least = cost;
            }
        }
        return least;
    }

    private boolean[] changed(boolean[] set) {
        boolean[] next = set.clone();
        int back = 1 + random.nextInt(3);
        int[] taken = java.util.stream.IntStream.range(0, set.length)
                .filter(i -> set[i])
                .toArray();
        for (int i = 0; i < back && taken.length > 0; i++) {
            next[taken[random.nextInt(taken.length)]] = false;
        }
        int add = random.nextInt(back + 2);
        for (int i = 0; i < add; i++) {
            next[random.nextInt(next.length)] = true;
        }
        return next;
    }

    private long cost(boolean[] set) {
        long cost = 0;
        for (int i = 0; i < set.length; i++) {
            cost += set[i] ? boards.get(i).board().cost() : 0;
        }
        return cost;
    }

    private boolean enough(boolean[] set) {
        long have = 0;
        int i = 0;
        long need = 0;
        for (int t = 0; t < asked.length; t++) {
            need += asked[t];
            for (; i < set.length && boards.get(i).period() == t; i++) {
                have += set[i] ? boards.get(i).board().area() : 0;
            }
            if (have < need) {
                return false;
            }
        }
        return true;
    }

    private boolean holds(boolean[] set) {
        for (PlaceRule rule : PlaceRule.values()) {
            for (BlankOrder order : BlankOrder.values()) {
                if (holds(set, rule, order)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean holds(boolean[] set, PlaceRule rule, BlankOrder order) {
        List<OpenBoard> rack = new ArrayList<>();
        int i = 0;
        for (int t = 0; t < asked.length; t++) {
            for (; i < set.length && boards.get(i).period() == t; i++) {
                if (set[i]) {
                    ForSale board = boards.get(i).board();
                    rack.add(new OpenBoard(i, board.width(), board.height()));
                }
            }
            List<Wanted> blanks = woodCase.periods().get(t).blanks();
            if (Laying.lay(rack, blanks, orders[t][order.ordinal()], rule, woodCase.turning(), null) == null) {
                return false;
            }
        }
        return true;
    }
}
