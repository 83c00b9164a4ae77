package puzzleworkshop.planning.schedule;

import java.util.Arrays;
import puzzleworkshop.planning.schedule.SchedulingProblem.Operation;

/**
 * Where the operations of a {@link SchedulingProblem} stand in the free time of its people and machines. An operation is
 * placed at the earliest moment at which those it needs are free and what comes before it is done; what is placed never
 * moves. Minutes and indices are those of the problem; {@link FreeTime#NEVER} is the moment of what finds no place.
 *
 * <p>Work longer than the longest free span goes on after the break; all other work is done in one piece.
 */
final class Timetable {

    /** A machine keeps its setting for the next job of the same kind if that comes within so many minutes. */
    private static final int SETTING_KEPT = 30;

    private final SchedulingProblem shop;
    private final FreeTime[] free;
    final int[] start;

    /** Below zero while the operation is not placed. */
    final int[] end;

    /** Who does it; below zero for nobody. */
    final int[] person;

    final boolean[] setUpSaved;

    /** Of the wait before an operation: open minutes lost to its machine, and to hands. */
    final int[] waitedForMachine;

    final int[] waitedForHands;
    private final int[] placedOnLaser;
    private int onLaser;
    private final int people;

    Timetable(SchedulingProblem shop) {
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
    }

    /** Empty, but for the work that has begun. */
    void clear() {
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

    /** When the last operation of a job ends; now, if nothing of it is left to do. */
    int finish(int job) {
        int[] route = shop.route[job];
        return route.length == 0 ? shop.now : end[route[route.length - 1]];
    }

    /** Minutes that are taken of a resource between two moments. */
    int taken(int resource, int from, int to) {
        return shop.open[resource].between(from, to) - free[resource].between(from, to);
    }

    int setUps() {
        int setUps = 0;
        for (boolean saved : setUpSaved) {
            setUps += saved ? 0 : 1;
        }
        return setUps;
    }

    /**
     * Places an operation and what comes before it; one that has its place keeps it. Stages go forward, so the way back
     * to what must be placed first always ends.
     */
    void place(int o) {
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
            if (!operation.begun) {
                ready = Math.max(ready, shop.ready[member][k]);
            }
            if (k > 0) {
                place(route[k - 1]);
                ready = Math.max(ready, Math.max(end[route[k - 1]], rested(member, k)));
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

    /** When all is rested that holds up the k-th operation of a job; those before it have their places. */
    int rested(int job, int k) {
        int rested = 0;
        for (int before = 0; before < k; before++) {
            if (shop.heldByRest[job][before] == k) {
                rested = Math.max(rested, end[shop.route[job][before]] + shop.rest[job][before]);
            }
        }
        return rested;
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
}
