package puzzleworkshop.planning.schedule;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.schedule.OneMachine.Work;

/**
 * Finds the sequence of all waiting work whose lateness costs least by {@link LatenessCost}. It starts from the classical
 * sequences (earliest due date, fewest late on the narrow place, least slack, same settings together), each with and
 * without the laser served first, and improves the best by {@link SequenceSearch}. Of equally dear ones that with fewer
 * set-ups, then that which finishes earlier in sum.
 *
 * <p>Jobs that wait for a picture, a payment or anything else are laid behind all that are ready, so that none of these
 * waits for them. If one of them would be late there, its outlook is read from a second plan, in which they have places
 * of their own but still make no ready job dearer: the plan as it will be if what they wait for comes.
 *
 * <p>Up to six jobs all sequences are tried. The same input gives the same plan: the search is bounded by the number of
 * plans tried, never by the clock.
 */
public final class Scheduler {

    private static final int EXHAUSTIVE = 6;
    private static final int USUAL_JOBS = 60;
    private static final int USUAL_TRIES = 1500;

    private final int tries;
    private final int bufferMinutes;
    private final Batching batching;
    private final LatenessCost cost;

    /** As the other one, with the usual cost of lateness. */
    public Scheduler(int tries, int bufferMinutes, Batching batching) {
        this(tries, bufferMinutes, batching, LatenessCost.USUAL);
    }

    /**
     * @param tries plans to try at most for {@value #USUAL_JOBS} jobs; for fewer jobs more, for more jobs fewer, so that
     *     the time stays about the same
     * @param bufferMinutes working minutes that a new promise keeps in reserve
     * @param cost what lateness costs
     */
    public Scheduler(int tries, int bufferMinutes, Batching batching, LatenessCost cost) {
        this.tries = tries;
        this.bufferMinutes = bufferMinutes;
        this.batching = batching;
        this.cost = cost;
    }

    /** With the search that is right for a screen, and a buffer of half a working day. */
    public static Scheduler usual() {
        return usual(240, LatenessCost.USUAL);
    }

    /** With the search that is right for a screen. */
    public static Scheduler usual(int bufferMinutes, LatenessCost cost) {
        return new Scheduler(USUAL_TRIES, bufferMinutes, Batching.USUAL, cost);
    }

    Scheduler withTries(int others) {
        return new Scheduler(others, bufferMinutes, batching, cost);
    }

    int bufferMinutes() {
        return bufferMinutes;
    }

    /** The plan of the jobs from now on. */
    public Schedule plan(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now) {
        SchedulingProblem shop = shop(calendar, jobs, now);
        ListScheduler dispatch = new ListScheduler(shop);
        SequenceScore score = dispatch.lay(search(shop, dispatch));
        Schedule plan = new ScheduleReport(shop, dispatch.laid()).schedule();
        return score.waitingCost() > 0 ? plan.withOutlooksOfWaiting(ifAllComes(shop)) : plan;
    }

    private Schedule ifAllComes(SchedulingProblem shop) {
        ListScheduler dispatch = new ListScheduler(shop);
        dispatch.waitingLast(false);
        dispatch.lay(search(shop, dispatch));
        return new ScheduleReport(shop, dispatch.laid()).schedule();
    }

    SchedulingProblem shop(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now) {
        return new SchedulingProblem(calendar, jobs, now, batching, cost);
    }

    /** The best order found; the dispatch is left set for it, but with another one laid. */
    int[] search(SchedulingProblem shop, ListScheduler dispatch) {
        SequenceSearch jobByJob = search(shop, dispatch, false);
        SequenceSearch cutsFirst = search(shop, dispatch, true);
        boolean better = cutsFirst.score().compareTo(jobByJob.score()) < 0;
        dispatch.cutsFirst(better);
        return better ? cutsFirst.best() : jobByJob.best();
    }

    private SequenceSearch search(SchedulingProblem shop, ListScheduler dispatch, boolean cutsFirst) {
        dispatch.cutsFirst(cutsFirst);
        List<int[]> seeds = seeds(shop, dispatch);
        int most = (int) Math.clamp((long) tries * USUAL_JOBS / Math.max(1, seeds.getFirst().length), 30, 20L * tries);
        SequenceSearch search = new SequenceSearch(shop, dispatch, seeds, most);
        if (seeds.getFirst().length <= EXHAUSTIVE) {
            search.all();
        } else {
            search.improve();
        }
        return search;
    }

    static List<int[]> seeds(SchedulingProblem shop, ListScheduler dispatch) {
        int[] movable = dispatch.movable();
        List<int[]> seeds = new ArrayList<>();
        Comparator<Integer> byDue = Comparator.<Integer>comparingInt(j -> shop.due[j])
                .thenComparing(j -> shop.jobs.get(j).id());
        seeds.add(sorted(movable, byDue));
        List<Work> works = Bottleneck.works(shop, Bottleneck.of(shop).resource(), seeds.getFirst());
        seeds.add(OneMachine.fewestLate(works).sequence().stream()
                .mapToInt(w -> (int) w.id())
                .toArray());
        seeds.add(sorted(
                movable,
                Comparator.<Integer>comparingInt(j -> shop.due[j] - length(shop, j))
                        .thenComparing(byDue)));
        seeds.add(sorted(
                movable,
                Comparator.<Integer>comparingInt(j -> Math.floorDiv(shop.due[j], 1440))
                        .thenComparing(j -> setting(shop, j))
                        .thenComparing(byDue)));
        return seeds;
    }

    private static int[] sorted(int[] jobs, Comparator<Integer> by) {
        return Arrays.stream(jobs)
                .boxed()
                .sorted(by)
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private static int length(SchedulingProblem shop, int job) {
        return shop.route[job].length == 0 ? 0 : shop.share(shop.route[job][0]) + shop.after(job)[0];
    }

    private static int setting(SchedulingProblem shop, int job) {
        return IntStream.of(shop.route[job])
                .map(o -> shop.operations.get(o).machine() == SchedulingProblem.LASER
                        ? shop.operations.get(o).setting
                        : -1)
                .max()
                .orElse(-1);
    }
}
