package puzzleworkshop.planning.schedule;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Searches the sequence of jobs whose plan is best by {@link SequenceScore}: iterated local search.
 *
 * <p>From the best of the seeds it goes down by the first change that makes lateness cheaper: a late job (the dearest
 * first) to an earlier place, exchanged with an earlier one, an earlier job behind it, blocks of two and three to an
 * earlier place. Where no such change helps, up to three changes are made at random and it goes down from there; the
 * best of all stays. Last, neighbours are exchanged for fewer set-ups and earlier ends.
 *
 * <p>Deterministic: the seed of the random changes is fixed, and the plans tried are counted, not the time. Nothing is
 * proved: how far from the best possible sequence it stays is measured against all sequences up to nine jobs (benchmark
 * {@code schedule}).
 *
 * <p>Method: Lourenço, Martin and Stützle, Iterated Local Search, in: Handbook of Metaheuristics (2003).
 */
final class SequenceSearch {

    private static final long SEED = 7;
    /** Rounds of random changes that brought nothing, after which it stops. */
    private static final int PATIENCE = 60;
    /** Of the plans tried so many hundredths are kept for set-ups. */
    private static final int FOR_SET_UPS = 20;

    private final SchedulingProblem shop;
    private final ListScheduler dispatch;
    private final int most;
    private int tried;
    private int[] best;
    private SequenceScore bestScore;
    private int[] current;
    private SequenceScore score;

    SequenceSearch(SchedulingProblem shop, ListScheduler dispatch, List<int[]> seeds, int most) {
        this.shop = shop;
        this.dispatch = dispatch;
        this.most = most;
        for (int[] seed : seeds) {
            keepIfBest(seed, dispatch.lay(seed));
        }
    }

    int[] best() {
        return best;
    }

    SequenceScore score() {
        return bestScore;
    }

    /** Tries all sequences. */
    void all() {
        all(best.clone(), 0);
    }

    private void all(int[] order, int from) {
        if (from >= order.length - 1) {
            keepIfBest(order, dispatch.lay(order, bestScore.cost() + SequenceScore.SAME));
            return;
        }
        for (int i = from; i < order.length; i++) {
            swap(order, from, i);
            all(order, from + 1);
            swap(order, from, i);
        }
    }

    void improve() {
        int forLateness = most - most * FOR_SET_UPS / 100;
        Random random = new Random(SEED);
        current = best;
        score = bestScore;
        goDown(forLateness);
        for (int idle = 0; idle < PATIENCE && tried < forLateness && isLate(bestScore) && best.length > 2; idle++) {
            current = shaken(best, random);
            score = dispatch.lay(current);
            tried++;
            goDown(forLateness);
            if (isCheaper(score, bestScore)) {
                idle = -1;
            }
            keepIfBest(current, score);
        }
        keepIfBest(current, score);
        saveSetUps(random);
    }

    private boolean keepIfBest(int[] order, SequenceScore other) {
        if (other != null && (bestScore == null || other.compareTo(bestScore) < 0)) {
            best = order.clone();
            bestScore = other;
            return true;
        }
        return false;
    }

    private static boolean isLate(SequenceScore score) {
        return score.cost() > 0 || score.waitingCost() > 0;
    }

    private static boolean isCheaper(SequenceScore one, SequenceScore other) {
        return one.cost() < other.cost() - SequenceScore.SAME
                || one.cost() <= other.cost() + SequenceScore.SAME
                        && one.waitingCost() < other.waitingCost() - SequenceScore.SAME;
    }

    private void goDown(int until) {
        while (tried < until && isLate(score)) {
            int[] late = lateOnes();
            if (!(forward(late, until) || behind(late, until) || exchanged(late, until) || blocks(late, until))) {
                return;
            }
        }
    }

    private boolean takeIfCheaper(int[] order) {
        tried++;
        SequenceScore other = dispatch.lay(order, score.cost() + SequenceScore.SAME);
        if (other != null && isCheaper(other, score)) {
            current = order;
            score = other;
            return true;
        }
        return false;
    }

    /** Places of the late jobs, the dearest first. */
    private int[] lateOnes() {
        dispatch.lay(current);
        tried++;
        double[] cost = Arrays.stream(current)
                .mapToDouble(job -> shop.cost(job, dispatch.finish(job)))
                .toArray();
        return IntStream.range(0, current.length)
                .filter(i -> cost[i] > 0)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -cost[i]).thenComparing(i -> i))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private boolean forward(int[] late, int until) {
        for (int i : late) {
            for (int to = i - 1; to >= 0 && tried < until; to--) {
                if (takeIfCheaper(moved(current, i, 1, to))) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean behind(int[] late, int until) {
        for (int i : late) {
            for (int earlier = i - 1; earlier >= 0 && tried < until; earlier--) {
                if (takeIfCheaper(moved(current, earlier, 1, i))) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean exchanged(int[] late, int until) {
        for (int i : late) {
            for (int earlier = i - 2; earlier >= 0 && tried < until; earlier--) {
                int[] other = current.clone();
                swap(other, earlier, i);
                if (takeIfCheaper(other)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean blocks(int[] late, int until) {
        for (int i : late) {
            for (int length = 2; length <= 3; length++) {
                for (int from = Math.max(0, i - length + 1); from <= i && from + length <= current.length; from++) {
                    for (int to = from - 1; to >= 0 && tried < until; to--) {
                        if (takeIfCheaper(moved(current, from, length, to))) {
                            return true;
                        }
                    }
                }
            }
        }
        return false;
    }

    private static int[] shaken(int[] order, Random random) {
        int[] other = order;
        for (int changes = 1 + random.nextInt(3); changes > 0; changes--) {
            int from = random.nextInt(order.length);
            int to = random.nextInt(order.length);
            if (random.nextBoolean()) {
                other = moved(other, from, 1, to);
            } else {
                other = other.clone();
                swap(other, from, to);
            }
        }
        return other;
    }

    private void saveSetUps(Random random) {
        int until = Math.min(most, tried + most * FOR_SET_UPS / 100);
        boolean better = true;
        while (better && tried < until) {
            better = false;
            for (int i = 0; i + 1 < best.length && tried < until; i++) {
                better |= tryOn(moved(best, i, 1, i + 1));
            }
        }
        while (tried < until && best.length > 1) {
            int from = random.nextInt(best.length);
            int to = Math.clamp(from + random.nextInt(13) - 6L, 0, best.length - 1);
            if (from == to) {
                tried++;
            } else {
                tryOn(moved(best, from, 1, to));
            }
        }
    }

    private boolean tryOn(int[] order) {
        tried++;
        return keepIfBest(order, dispatch.lay(order, bestScore.cost() + SequenceScore.SAME));
    }

    private static void swap(int[] order, int i, int j) {
        int kept = order[i];
        order[i] = order[j];
        order[j] = kept;
    }

    /** With the block taken out and put where its first job then stands at the given place. */
    static int[] moved(int[] order, int from, int length, int to) {
        int[] other = new int[order.length];
        int place = Math.min(to, order.length - length);
        int next = 0;
        for (int i = 0; i <= order.length; i++) {
            if (next == place) {
                System.arraycopy(order, from, other, next, length);
                next += length;
            }
            if (i < order.length && (i < from || i >= from + length)) {
                other[next++] = order[i];
            }
        }
        return other;
    }
}
