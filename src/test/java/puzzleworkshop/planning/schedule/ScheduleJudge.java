package puzzleworkshop.planning.schedule;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import puzzleworkshop.planning.calendar.WorkingCalendar;

/** Judges the search from outside it: the plain sequence by due date, and the best of all sequences. */
public final class ScheduleJudge {

    private ScheduleJudge() {}

    /** The plan that takes the orders by their dates and changes nothing. */
    public static Schedule byDueDate(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now) {
        SchedulingProblem shop = new SchedulingProblem(calendar, jobs, now, Batching.USUAL);
        ListScheduler dispatch = new ListScheduler(shop);
        dispatch.lay(Scheduler.seeds(shop, dispatch).getFirst());
        return new ScheduleReport(shop, dispatch, 240).schedule();
    }

    /** Late jobs in the best of all sequences. */
    public static int fewestLate(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now) {
        ListScheduler dispatch = new ListScheduler(new SchedulingProblem(calendar, jobs, now, Batching.USUAL));
        int[] fewest = {Integer.MAX_VALUE};
        all(dispatch, dispatch.movable(), 0, fewest);
        dispatch.cutsFirst(true);
        all(dispatch, dispatch.movable(), 0, fewest);
        return fewest[0];
    }

    private static void all(ListScheduler dispatch, int[] order, int from, int[] fewest) {
        if (from >= order.length - 1) {
            fewest[0] = Math.min(fewest[0], dispatch.lay(order).late());
            return;
        }
        for (int i = from; i < order.length; i++) {
            swap(order, from, i);
            all(dispatch, order, from + 1, fewest);
            swap(order, from, i);
        }
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
