package puzzleworkshop.planning.schedule;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import puzzleworkshop.planning.schedule.SchedulingProblem.Operation;
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
 * <p>Work longer than the longest free span goes on after the break; all other work is done in one piece.
 */
final class ListScheduler {

    /** A machine keeps its setting for the next job of the same kind if that comes within so many minutes. */
    private static final int SETTING_KEPT = 30;

    private static final int[] NONE = {};

    private final SchedulingProblem shop;
    private final FreeTime[] free;
    final int[] start;
    final int[] end;
    final int[] person;
    final boolean[] setUpSaved;
    /** Of the wait before an operation: open minutes lost to its machine, and to hands. */
    final int[] waitedForMachine;

    final int[] waitedForHands;
    private final int[] placedOnLaser;
    private int onLaser;
    private final int people;
    private final int[] pinnedReady;
    private final int[] waiting;
    private boolean waitingLast = true;
    private boolean cutsFirst;
    private int behindAll = -1;

    ListScheduler(SchedulingProblem shop) {
        this.shop = shop;
        int n = shop.operations.size();
        this.start = new int[n];
        this.end = new int[n];
        this.person = new int[n];
        this.setUpSaved = new boolean[n];
        this.waitedForMachine = new int[n];
        this.waitedForHands = new int[n];
        this.placedOnLaser = new int[n];
        this.people = shop.open.length - SchedulingProblem.FIRST_PERSON;
        this.free = new FreeTime[shop.open.length];
        for (int i = 0; i < free.length; i++) {
            free[i] = shop.open[i].copy();
        }
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

    Score lay(int[] order) {
        return lay(order, Double.MAX_VALUE);
    }

    /** Lays the jobs, but gives up, with null, as soon as those that are ready cost more than the bound. */
    Score lay(int[] order, double bound) {
        begin();
        int[] last = waitingLast ? waiting : pinnedWaiting();
        double cost = placeAll(pinnedReady, order, bound);
        if (cost > bound) {
            return null;
        }
        placeAll(last, NONE, Double.MAX_VALUE);
        return score();
    }

    private void begin() {
        for (int i = 0; i < free.length; i++) {
            free[i].become(shop.open[i]);
        }
        Arrays.fill(end, -1);
        Arrays.fill(setUpSaved, false);
        onLaser = 0;
        for (int o = 0; o < end.length; o++) {
            if (shop.operations.get(o).begun) {
                place(o);
            }
        }
    }

    /** Lays only these, and with the cuts first only up to their cuts: the beginning of all sequences that begin so. */
    void layUpToCut(int[] first) {
        begin();
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
                place(shop.route[j][k]);
            }
        }
    }

    int finish(int job) {
        int[] route = shop.route[job];
        return route.length == 0 ? shop.now : end[route[route.length - 1]];
    }

    /** Minutes that the plan laid last has taken of a resource between two moments. */
    int taken(int resource, int from, int to) {
        return shop.open[resource].between(from, to) - free[resource].between(from, to);
    }

    private Score score() {
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
        int setUps = 0;
        for (int o = 0; o < end.length; o++) {
            setUps += setUpSaved[o] ? 0 : 1;
        }
        return new Score(ready, waitingOnes, late, setUps, finishes);
    }

    private void placeJob(int j) {
        for (int o : shop.route[j]) {
            place(o);
        }
    }

    /** Stages go forward, so the way back to what must be placed first always ends. */
    private void place(int o) {
        if (end[o] >= 0) {
            return;
        }
        Operation operation = shop.operations.get(o);
        int ready = Math.max(shop.now, operation.notBefore);
        for (int member : operation.members) {
            int[] route = shop.route[member];
            int k = 0;
            while (route[k] != o) {
                k++;
            }
            if (k == shop.held[member] && !operation.begun) {
                ready = Math.max(ready, shop.heldUntil[member]);
            }
            if (k == 0) {
                ready = Math.max(ready, operation.begun ? shop.now : shop.ready[member]);
            } else {
                place(route[k - 1]);
                ready = Math.max(ready, end[route[k - 1]] + shop.rest[member][k - 1]);
            }
        }
        if (ready >= FreeTime.NEVER) {
            put(o, FreeTime.NEVER, FreeTime.NEVER, -1);
            return;
        }
        if (operation.machine() < 0) {
            byHand(o, operation, ready);
        } else {
            byMachine(o, operation, ready);
        }
    }

    private void put(int o, int from, int to, int who) {
        start[o] = from;
        end[o] = Math.min(to, FreeTime.NEVER);
        person[o] = who;
    }

    private void byHand(int o, Operation operation, int ready) {
        int length = operation.setUp + operation.work;
        if (length == 0) {
            put(o, ready, ready, -1);
            return;
        }
        int bestStart = FreeTime.NEVER;
        int bestEnd = FreeTime.NEVER;
        int who = -1;
        for (int p = 0; p < people; p++) {
            if (!shop.may[operation.stage.ordinal()][p]) {
                continue;
            }
            FreeTime hands = free[SchedulingProblem.FIRST_PERSON + p];
            int from;
            int to;
            if (length > shop.longest[SchedulingProblem.FIRST_PERSON + p]) {
                from = hands.firstOpen(ready);
                to = from == FreeTime.NEVER ? from : hands.endOfSpread(from, length);
            } else {
                from = hands.earliest(ready, length);
                to = from + length;
            }
            if (to < bestEnd) {
                bestStart = from;
                bestEnd = to;
                who = p;
            }
        }
        waitedForMachine[o] = 0;
        waitedForHands[o] = 0;
        if (who >= 0) {
            free[SchedulingProblem.FIRST_PERSON + who].take(bestStart, bestEnd);
            waitedForHands[o] = shop.open[SchedulingProblem.FIRST_PERSON + who].between(ready, bestStart);
        }
        put(o, bestStart, bestEnd, who);
    }

    private void byMachine(int o, Operation operation, int ready) {
        int m = operation.machine();
        FreeTime machine = free[m];
        int length = operation.setUp + operation.work;
        boolean spread = length > shop.longest[m];
        int alone = spread ? machine.firstOpen(ready) : machine.earliest(ready, length);
        int from = alone;
        int who = -1;
        while (from < FreeTime.NEVER && operation.hands() > 0) {
            int withHands = FreeTime.NEVER;
            for (int p = 0; p < people; p++) {
                if (shop.may[operation.stage.ordinal()][p]) {
                    int hands = free[SchedulingProblem.FIRST_PERSON + p].earliest(from, operation.hands());
                    if (hands < withHands) {
                        withHands = hands;
                        who = p;
                    }
                }
            }
            if (withHands == from || withHands == FreeTime.NEVER) {
                from = withHands;
                break;
            }
            from = spread ? machine.firstOpen(withHands) : machine.earliest(withHands, length);
        }
        int to = from >= FreeTime.NEVER ? FreeTime.NEVER : spread ? machine.endOfSpread(from, length) : from + length;
        if (m == SchedulingProblem.LASER
                && operation.setting >= 0
                && operation.setUp > 0
                && savesSetUp(o, operation, ready, to)) {
            return;
        }
        if (to >= FreeTime.NEVER) {
            put(o, FreeTime.NEVER, FreeTime.NEVER, -1);
            return;
        }
        // Work that is spread over days gives way to what was laid before it: that is waiting as well.
        int between = spread ? shop.open[m].between(from, to) - length : 0;
        waitedForMachine[o] = shop.open[m].between(ready, alone) + between;
        waitedForHands[o] = shop.open[m].between(alone, from);
        machine.take(from, to);
        if (who >= 0 && operation.hands() > 0) {
            free[SchedulingProblem.FIRST_PERSON + who].take(from, from + operation.hands());
        }
        if (m == SchedulingProblem.LASER) {
            placedOnLaser[onLaser++] = o;
        }
        put(o, from, to, who);
    }

    /** Puts the job right behind one of the same setting when that finishes it no later; the gap between is kept. */
    private boolean savesSetUp(int o, Operation operation, int ready, int usualEnd) {
        int hands = operation.handsBesideSetUp;
        int best = -1;
        int bestStart = 0;
        int who = -1;
        for (int i = 0; i < onLaser; i++) {
            int before = placedOnLaser[i];
            int from = Math.max(ready, end[before]);
            if (shop.operations.get(before).setting != operation.setting
                    || from - end[before] > SETTING_KEPT
                    || from + operation.work > usualEnd
                    || (best >= 0 && from >= bestStart)
                    || !free[SchedulingProblem.LASER].isFree(end[before], from + operation.work)) {
                continue;
            }
            int helper = hands == 0 ? 0 : whoIsFree(operation, from, from + hands);
            if (helper >= 0) {
                best = before;
                bestStart = from;
                who = helper;
            }
        }
        if (best < 0) {
            return false;
        }
        waitedForMachine[o] = shop.open[SchedulingProblem.LASER].between(ready, bestStart);
        waitedForHands[o] = 0;
        free[SchedulingProblem.LASER].take(end[best], bestStart + operation.work);
        if (hands > 0) {
            free[SchedulingProblem.FIRST_PERSON + who].take(bestStart, bestStart + hands);
        }
        placedOnLaser[onLaser++] = o;
        setUpSaved[o] = true;
        put(o, bestStart, bestStart + operation.work, hands > 0 ? who : person[best]);
        return true;
    }

    private int whoIsFree(Operation operation, int from, int to) {
        for (int p = 0; p < people; p++) {
            if (shop.may[operation.stage.ordinal()][p] && free[SchedulingProblem.FIRST_PERSON + p].isFree(from, to)) {
                return p;
            }
        }
        return -1;
    }

    /**
     * What makes one plan better than another: what lateness costs, by {@link LatenessCost}; first that of orders that can
     * go on, then that of orders that wait. Of equal ones that with fewer set-ups, then that which is done earlier in sum.
     *
     * @param late how many are late, which decides nothing
     */
    record Score(double cost, double waitingCost, int late, int setUps, long finishes) implements Comparable<Score> {

        /** Sums of the same costs in another order differ by less. */
        static final double SAME = 1e-9;

        @Override
        public int compareTo(Score other) {
            int byCost = compare(cost, other.cost);
            if (byCost != 0) {
                return byCost;
            }
            int byWaiting = compare(waitingCost, other.waitingCost);
            if (byWaiting != 0) {
                return byWaiting;
            }
            int bySetUps = Integer.compare(setUps, other.setUps);
            return bySetUps != 0 ? bySetUps : Long.compare(finishes, other.finishes);
        }

        private static int compare(double one, double other) {
            return Math.abs(one - other) <= SAME ? 0 : Double.compare(one, other);
        }
    }
}
