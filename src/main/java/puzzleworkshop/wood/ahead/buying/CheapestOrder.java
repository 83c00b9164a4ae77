package puzzleworkshop.wood.ahead.buying;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import puzzleworkshop.wood.play.ForSale;

/**
 * The cheapest order of boards that serves. Orders are tried from the cheapest up (best-first search over how many of each:
 * Hart, Nilsson and Raphael 1968, without an estimate), those with too little wood without a trial. When too many orders had to
 * be tried, the cheapest of those of one or two kinds is taken and improved by exchanges: then not surely the least.
 */
public final class CheapestOrder {

    /** More boards at once are no order of a small workshop. */
    static final int MOST_BOARDS = 80;

    private static final int MOST_TRIALS = 400;
    private static final int MOST_STEPS = 40_000;

    private record Order(int[] counts, long cost, int boards, int last) {}

    private final List<ForSale> kinds;
    private final long leastArea;
    private final Predicate<int[]> serves;
    private final Map<List<Integer>, Boolean> known = new HashMap<>();

    /**
     * @param leastArea with less wood no order serves
     * @param serves of how many of each kind
     */
    public CheapestOrder(List<ForSale> kinds, long leastArea, Predicate<int[]> serves) {
        this.kinds = kinds;
        this.leastArea = leastArea;
        this.serves = serves;
    }

    public Optional<int[]> cheapest() {
        return find(new int[kinds.size()], all());
    }

    /** With at least one of the kind. */
    public Optional<int[]> with(int kind) {
        int[] one = new int[kinds.size()];
        one[kind] = 1;
        return find(one, all());
    }

    /** With none of the kind. */
    public Optional<int[]> without(int kind) {
        return find(
                new int[kinds.size()],
                IntStream.of(all()).filter(one -> one != kind).toArray());
    }

    private int[] all() {
        return IntStream.range(0, kinds.size()).toArray();
    }

    public long cost(int[] order) {
        return sum(order, true);
    }

    public long area(int[] order) {
        return sum(order, false);
    }

    private long sum(int[] order, boolean cost) {
        long sum = 0;
        for (int kind = 0; kind < order.length; kind++) {
            sum += order[kind]
                    * (cost ? kinds.get(kind).cost() : kinds.get(kind).area());
        }
        return sum;
    }

    private boolean serves(int[] order) {
        return area(order) >= leastArea
                && known.computeIfAbsent(Arrays.stream(order).boxed().toList(), counts -> serves.test(order));
    }

    private Optional<int[]> find(int[] from, int[] allowed) {
        PriorityQueue<Order> open =
                new PriorityQueue<>(Comparator.comparingLong(Order::cost).thenComparingInt(Order::boards));
        open.add(new Order(from, cost(from), IntStream.of(from).sum(), 0));
        int trials = 0;
        for (int step = 0; step < MOST_STEPS && trials < MOST_TRIALS && !open.isEmpty(); step++) {
            Order order = open.poll();
            trials += area(order.counts()) >= leastArea ? 1 : 0;
            if (serves(order.counts())) {
                return Optional.of(order.counts());
            }
            for (int i = order.last(); i < allowed.length && order.boards() < MOST_BOARDS; i++) {
                int[] more = order.counts().clone();
                more[allowed[i]]++;
                open.add(new Order(more, cost(more), order.boards() + 1, i));
            }
        }
        return ofTwoKinds(from, allowed).map(order -> exchanged(order, from, allowed));
    }

    /** Along the border between too little and enough: one of a kind less, as many of the other more as it takes. */
    private Optional<int[]> ofTwoKinds(int[] from, int[] allowed) {
        int[] best = null;
        for (int one : allowed) {
            for (int other : allowed) {
                int[] order = enough(from.clone(), one);
                if (order == null) {
                    order = enough(from.clone(), other);
                }
                while (order != null) {
                    best = best == null || cost(order) < cost(best) ? order : best;
                    if (order[one] <= from[one] || one == other) {
                        break;
                    }
                    int[] next = order.clone();
                    next[one]--;
                    order = enough(next, other);
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** The order with as many more of the kind as it takes to serve; null when no number does. */
    private int[] enough(int[] order, int kind) {
        long lacks = leastArea - area(order);
        if (lacks > 0) {
            order[kind] += (int) Math.min(
                    MOST_BOARDS,
                    (lacks + kinds.get(kind).area() - 1) / kinds.get(kind).area());
        }
        while (IntStream.of(order).sum() <= MOST_BOARDS) {
            if (serves(order)) {
                return order;
            }
            order[kind]++;
        }
        return null;
    }

    private int[] exchanged(int[] start, int[] from, int[] allowed) {
        int[] best = start;
        boolean better = true;
        while (better) {
            better = false;
            for (int less : allowed) {
                for (int more : allowed) {
                    int[] next = best.clone();
                    next[less]--;
                    if (next[less] < from[less]) {
                        continue;
                    }
                    int[] cheaper = serves(next) ? next : exchanged(next, more);
                    if (cheaper != null && cost(cheaper) < cost(best)) {
                        best = cheaper;
                        better = true;
                    }
                }
            }
        }
        return best;
    }

    private int[] exchanged(int[] order, int more) {
        order[more]++;
        return serves(order) ? order : null;
    }
}
