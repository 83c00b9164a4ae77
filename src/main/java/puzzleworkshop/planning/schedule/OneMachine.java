package puzzleworkshop.planning.schedule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Jobs on one machine, all at hand from the start: the two classical sequences that are provably best, used as the
 * skeleton of the week's plan on its narrow place.
 *
 * <p>Exact integer arithmetic; equal jobs keep the order in which they were given.
 */
public final class OneMachine {

    private OneMachine() {}

    /**
     * @param id whatever tells the jobs apart
     * @param time on the machine, not negative
     * @param due counted from the start, may be negative when the date has passed
     */
    public record Work(long id, long time, long due) {

        public Work {
            if (time < 0) {
                throw new IllegalArgumentException("A job takes zero or more time, not " + time);
            }
        }
    }

    /**
     * @param onTime finish by their dates, in this order
     * @param late cannot; follow after the others, earliest date first
     */
    public record Split(List<Work> onTime, List<Work> late) {

        public List<Work> sequence() {
            List<Work> all = new ArrayList<>(onTime);
            all.addAll(late);
            return all;
        }
    }

    /** Earliest due date first: no sequence has a smaller maximum lateness (Jackson 1955). */
    public static List<Work> earliestDueFirst(List<Work> jobs) {
        return jobs.stream().sorted(Comparator.comparingLong(Work::due)).toList();
    }

    /**
     * The sequence with the fewest late jobs: take them earliest due date first, and whenever one would be late drop
     * the longest taken so far (Moore, Management Science 15(1), 1968, with Hodgson's form of the rule).
     */
    public static Split fewestLate(List<Work> jobs) {
        List<Work> byDue = earliestDueFirst(jobs);
        PriorityQueue<Integer> taken = new PriorityQueue<>(
                Comparator.<Integer>comparingLong(i -> -byDue.get(i).time()).thenComparing(Comparator.reverseOrder()));
        boolean[] dropped = new boolean[byDue.size()];
        long end = 0;
        for (int i = 0; i < byDue.size(); i++) {
            taken.add(i);
            end += byDue.get(i).time();
            if (end > byDue.get(i).due()) {
                int longest = taken.remove();
                dropped[longest] = true;
                end -= byDue.get(longest).time();
            }
        }
        List<Work> onTime = new ArrayList<>();
        List<Work> late = new ArrayList<>();
        for (int i = 0; i < byDue.size(); i++) {
            (dropped[i] ? late : onTime).add(byDue.get(i));
        }
        return new Split(List.copyOf(onTime), List.copyOf(late));
    }

    /** The largest finish minus due date when done in the given order; negative when all are early; 0 without jobs. */
    public static long maximumLateness(List<Work> sequence) {
        long end = 0;
        long worst = sequence.isEmpty() ? 0 : Long.MIN_VALUE;
        for (Work job : sequence) {
            end += job.time();
            worst = Math.max(worst, end - job.due());
        }
        return worst;
    }

    /** How many finish after their date when done in the given order. */
    public static int lateIn(List<Work> sequence) {
        long end = 0;
        int late = 0;
        for (Work job : sequence) {
            end += job.time();
            if (end > job.due()) {
                late++;
            }
        }
        return late;
    }
}
