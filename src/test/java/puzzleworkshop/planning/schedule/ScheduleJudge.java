package puzzleworkshop.planning.schedule;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import puzzleworkshop.planning.calendar.WorkingCalendar;

/** Judges the search from outside it: the plain sequence by due date, and the best of all sequences. */
public final class ScheduleJudge {

    private ScheduleJudge() {}

    /** The plan that takes the orders by their dates and changes nothing. */
    public static Schedule byDueDate(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now) {
        SchedulingProblem shop = new SchedulingProblem(calendar, jobs, now, Batching.USUAL, LatenessCost.USUAL);
        ListScheduler dispatch = new ListScheduler(shop);
        dispatch.lay(Scheduler.seeds(shop, dispatch).getFirst());
        return new ScheduleReport(shop, dispatch.laid()).schedule();
    }

    /** What lateness costs in the best of all sequences: every one is tried. */
    public static double leastCostOfAll(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now) {
        ListScheduler dispatch =
                new ListScheduler(new SchedulingProblem(calendar, jobs, now, Batching.USUAL, LatenessCost.USUAL));
        double[] least = {Double.MAX_VALUE};
        for (boolean cutsFirst : new boolean[] {false, true}) {
            dispatch.cutsFirst(cutsFirst);
            all(dispatch, dispatch.movable(), 0, least);
        }
        return least[0];
    }

    private static void all(ListScheduler dispatch, int[] order, int from, double[] least) {
        if (from >= order.length - 1) {
            least[0] = Math.min(least[0], dispatch.lay(order).cost());
            return;
        }
        for (int i = from; i < order.length; i++) {
            swap(order, from, i);
            all(dispatch, order, from + 1, least);
            swap(order, from, i);
        }
    }

    /**
     * The same by branch and bound, for up to nine jobs: sequences are built from the front, and one is given up when
     * what its jobs cost already, or must cost after their cut, is no less than the best sequence known.
     */
    public static double leastCost(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now) {
        SchedulingProblem shop = new SchedulingProblem(calendar, jobs, now, Batching.USUAL, LatenessCost.USUAL);
        ListScheduler dispatch = new ListScheduler(shop);
        double[] least = {Double.MAX_VALUE};
        for (int[] seed : Scheduler.seeds(shop, dispatch)) {
            least[0] = Math.min(least[0], dispatch.lay(seed).cost());
        }
        for (boolean cutsFirst : new boolean[] {false, true}) {
            dispatch.cutsFirst(cutsFirst);
            branch(shop, dispatch, dispatch.movable(), 0, least);
        }
        return least[0];
    }

    private static void branch(
            SchedulingProblem shop, ListScheduler dispatch, int[] order, int placed, double[] least) {
        if (least[0] == 0) {
            return;
        }
        if (placed >= order.length - 1) {
            least[0] = Math.min(least[0], dispatch.lay(order).cost());
            return;
        }
        for (int i = placed; i < order.length; i++) {
            swap(order, placed, i);
            if (atLeast(shop, dispatch, Arrays.copyOf(order, placed + 1)) < least[0] - 1e-9) {
                branch(shop, dispatch, order, placed + 1, least);
            }
            swap(order, placed, i);
        }
    }

    /** Jobs that follow never make those before them earlier, but with the cuts first they may delay what follows a cut. */
    private static double atLeast(SchedulingProblem shop, ListScheduler dispatch, int[] first) {
        dispatch.layUpToCut(first);
        double cost = 0;
        for (int job : first) {
            int[] route = shop.route[job];
            int last = route.length - 1;
            int after = 0;
            while (last >= 0 && dispatch.laid().end[route[last]] < 0) {
                SchedulingProblem.Operation operation = shop.operations.get(route[last]);
                after += operation.members.size() > 1 ? 0 : operation.setUp + operation.work;
                last--;
                after += last >= 0 ? shop.rest[job][last] : 0;
            }
            int reached = last < 0 ? shop.now : dispatch.laid().end[route[last]];
            cost += shop.cost(job, reached + after);
        }
        return cost;
    }

    private static void swap(int[] order, int i, int j) {
        int kept = order[i];
        order[i] = order[j];
        order[j] = kept;
    }

    /** A small week in which not everything can be on time. */
    public static List<Job> tight(int count, long seed) {
        Random random = new Random(seed);
        List<Job> jobs = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            List<Task> tasks =
                    WorkshopWeeks.whole(20 + random.nextInt(100), random.nextBoolean() ? "birch 3" : "poplar 4");
            int from = random.nextInt(6);
            LocalDateTime due = WorkshopWeeks.MONDAY.plusDays(random.nextInt(4)).withHour(12 + random.nextInt(5));
            jobs.add(Job.of(i + 1, due, tasks.subList(from, tasks.size())));
        }
        return jobs;
    }
}
