package puzzleworkshop.planning.schedule;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import puzzleworkshop.workshop.Stage;

/**
 * Lays the jobs of a {@link SchedulingProblem} into its free time one after the other, each operation at the earliest moment at which
 * its people and machines are free and what comes before it is done. Work in progress goes first, then pinned jobs, then
 * the rest in the order asked for; a later job may fill a gap that an earlier one has left, but never moves it. Jobs that
 * wait for somebody or something come last, so that no job that is ready ever waits for them ({@link #waitingLast}).
 *
 * <p>What comes after the cut can be laid with each job, or behind the cuts of all jobs ({@link #cutsFirst}): then the
 * laser is served first, and hands finish and pack beside it.
 *
 * <p>Where each operation stands is the {@link Timetable}'s matter.
 */
final class ListScheduler {

    private static final int[] NONE = {};

    private final SchedulingProblem shop;
    private final Timetable laid;
    private final int[] pinnedReady;
    private final int[] waiting;
    private boolean waitingLast = true;
    private boolean cutsFirst;
    private int behindAll = -1;

    ListScheduler(SchedulingProblem shop) {
        this.shop = shop;
        this.laid = new Timetable(shop);
        Comparator<Integer> byDue = Comparator.comparingInt((Integer j) -> shop.due[j])
                .thenComparing(j -> shop.jobs.get(j).id());
        this.pinnedReady = all(j -> isPinned(j) && !waits(j), byDue);
        this.waiting = all(
                this::waits, Comparator.comparing((Integer j) -> !isPinned(j)).thenComparing(byDue));
    }

    private int[] all(IntPredicate of, Comparator<Integer> by) {
        return IntStream.range(0, shop.jobs.size())
                .filter(of)
                .boxed()
                .sorted(by)
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private boolean isPinned(int job) {
        return shop.jobs.get(job).pinned().isPresent();
    }

    private boolean waits(int job) {
        return shop.jobs.get(job).waitsFor().isPresent();
    }

    /**
     * Whether jobs that wait come behind all others. Otherwise they have a place in the sequence like any other: that is
     * the plan as it will be if what they wait for comes.
     */
    void waitingLast(boolean last) {
        waitingLast = last;
    }

    boolean isAnyWaiting() {
        return waiting.length > 0;
    }

    /** Jobs whose place in the order is free. */
    int[] movable() {
        return IntStream.range(0, shop.jobs.size())
                .filter(j -> !isPinned(j) && !(waitingLast && waits(j)))
                .toArray();
    }

    SequenceScore lay(int[] order) {
        return lay(order, Double.MAX_VALUE);
    }

    /** Lays the jobs, but gives up, with null, as soon as those that are ready cost more than the bound. */
    SequenceScore lay(int[] order, double bound) {
        laid.clear();
        int[] last = waitingLast ? waiting : pinnedWaiting();
        double cost = placeAll(pinnedReady, order, bound);
        if (cost > bound) {
            return null;
        }
        placeAll(last, NONE, Double.MAX_VALUE);
        return score();
    }

    /** Lays only these, and with the cuts first only up to their cuts: the beginning of all sequences that begin so. */
    void layUpToCut(int[] first) {
        laid.clear();
        if (cutsFirst) {
            placeUpToCut(pinnedReady);
            placeUpToCut(first);
        } else {
            placeAll(pinnedReady, first, Double.MAX_VALUE);
        }
    }

    private int[] pinnedWaiting() {
        return Arrays.stream(waiting).filter(this::isPinned).toArray();
    }

    private double placeAll(int[] before, int[] order, double bound) {
        if (cutsFirst) {
            placeUpToCut(before);
            placeUpToCut(order);
        }
        double cost = 0;
        for (int j : before) {
            placeJob(j);
            cost += waits(j) ? 0 : shop.cost(j, finish(j));
        }
        for (int j : order) {
            placeJob(j);
            cost += waits(j) ? 0 : shop.cost(j, finish(j));
            if (cost > bound) {
                return cost;
            }
        }
        return cost;
    }

    void cutsFirst(boolean first) {
        cutsFirst = first;
    }

    boolean cutsFirst() {
        return cutsFirst;
    }

    /** A job that gives way to everything, what comes after the others' cuts included; -1 for none. */
    void behindAll(int job) {
        behindAll = job;
    }

    /** Jobs that have no cut before them are laid whole: they are nearly done, and nothing waits for them. */
    private void placeUpToCut(int[] order) {
        for (int j : order) {
            int cut = SchedulingProblem.mainTask(shop.jobs.get(j));
            boolean ahead = shop.route[j].length > 0 && shop.operations.get(shop.route[j][cut]).stage == Stage.CUT;
            for (int k = 0; j != behindAll && k < shop.route[j].length && (!ahead || k <= cut); k++) {
                laid.place(shop.route[j][k]);
            }
        }
    }

    /** Where everything stands after the last laying. */
    Timetable laid() {
        return laid;
    }

    int finish(int job) {
        return laid.finish(job);
    }

    private SequenceScore score() {
        int late = 0;
        double ready = 0;
        double waitingOnes = 0;
        long finishes = 0;
        for (int j = 0; j < shop.route.length; j++) {
            double cost = shop.cost(j, finish(j));
            late += cost > 0 ? 1 : 0;
            if (waits(j)) {
                waitingOnes += cost;
            } else {
                ready += cost;
            }
            finishes += finish(j);
        }
        return new SequenceScore(ready, waitingOnes, late, laid.setUps(), finishes);
    }

    private void placeJob(int j) {
        for (int o : shop.route[j]) {
            laid.place(o);
        }
    }
}
