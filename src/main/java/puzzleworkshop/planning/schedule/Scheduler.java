package puzzleworkshop.planning.schedule;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.schedule.ListScheduler.Score;
import puzzleworkshop.planning.schedule.OneMachine.Work;

/**
 * Finds a good sequence for all waiting work. It starts from the classical sequences (earliest due date, fewest late on
 * the narrow place, least slack, same settings together), each with and without the laser served first, and then tries a bounded number of changes: late jobs
 * forward, jobs with slack behind late ones, neighbours exchanged, a few at random with a fixed seed. A change stays when
 * it makes fewer jobs late, or less late in sum, or saves set-ups, or finishes earlier, in this order.
 *
 * <p>Up to six jobs all sequences are tried. The same input gives the same plan: the search is bounded by the number of
 * plans tried, never by the clock.
 */
public final class Scheduler {

    private static final int EXHAUSTIVE = 6;
    private static final long SEED = 7;

    private final int tries;
    private final int bufferMinutes;
    private final Batching batching;

    /**
     * @param tries plans to try at most in the search
     * @param bufferMinutes working minutes of slack below which an order is tight
     */
    public Scheduler(int tries, int bufferMinutes, Batching batching) {
        this.tries = tries;
        this.bufferMinutes = bufferMinutes;
        this.batching = batching;
    }

    /** With the search that is right for a screen, and a buffer of half a working day. */
    public static Scheduler usual() {
        return new Scheduler(400, 240, Batching.USUAL);
    }

    Scheduler withTries(int others) {
        return new Scheduler(others, bufferMinutes, batching);
    }

    int bufferMinutes() {
        return bufferMinutes;
    }

    /** The plan of the jobs from now on. */
    public Schedule plan(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now) {
        SchedulingProblem shop = new SchedulingProblem(calendar, jobs, now, batching);
        ListScheduler dispatch = new ListScheduler(shop);
        dispatch.lay(search(shop, dispatch));
        return new ScheduleReport(shop, dispatch, bufferMinutes).schedule();
    }

    SchedulingProblem shop(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now) {
        return new SchedulingProblem(calendar, jobs, now, batching);
    }

    /** The best order found; the dispatch is left set for it, but with another one laid. */
    int[] search(SchedulingProblem shop, ListScheduler dispatch) {
        Search jobByJob = search(shop, dispatch, false);
        Search cutsFirst = search(shop, dispatch, true);
        boolean better = cutsFirst.bestScore.compareTo(jobByJob.bestScore) < 0;
        dispatch.cutsFirst(better);
        return better ? cutsFirst.best : jobByJob.best;
    }

    private Search search(SchedulingProblem shop, ListScheduler dispatch, boolean cutsFirst) {
        dispatch.cutsFirst(cutsFirst);
        Search search = new Search(dispatch, seeds(shop, dispatch));
        if (search.best.length <= EXHAUSTIVE) {
            search.all(search.best.clone(), 0);
        } else {
            search.improve(shop);
        }
        return search;
    }

    public static List<int[]> seeds(SchedulingProblem shop, ListScheduler dispatch) {
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
        return shop.jobs.get(job).tasks().stream()
                .mapToInt(t -> t.minutes() + t.rest())
                .sum();
    }

    private static int setting(SchedulingProblem shop, int job) {
        return IntStream.of(shop.route[job])
                .map(o -> shop.operations.get(o).machine() == SchedulingProblem.LASER
                        ? shop.operations.get(o).setting
                        : -1)
                .max()
                .orElse(-1);
    }

    private final class Search {
        private final ListScheduler dispatch;
        private int[] best;
        private Score bestScore;
        private int tried;

        Search(ListScheduler dispatch, List<int[]> seeds) {
            this.dispatch = dispatch;
            seeds.forEach(this::keepIfBetter);
        }

        private boolean keepIfBetter(int[] order) {
            tried++;
            Score score = dispatch.lay(order);
            if (bestScore == null || score.compareTo(bestScore) < 0) {
                best = order.clone();
                bestScore = score;
                return true;
            }
            return false;
        }

        void all(int[] order, int from) {
            if (from >= order.length - 1) {
                keepIfBetter(order);
                return;
            }
            for (int i = from; i < order.length; i++) {
                swap(order, from, i);
                all(order, from + 1);
                swap(order, from, i);
            }
        }

        void improve(SchedulingProblem shop) {
            boolean better = true;
            while (better && tried < tries) {
                better = lateOnesForward(shop) || longOnesBack(shop) || neighbours();
            }
            Random random = new Random(SEED);
            while (tried < tries && best.length > 1) {
                int from = random.nextInt(best.length);
                int to = Math.clamp(from + random.nextInt(13) - 6L, 0, best.length - 1);
                if (from != to) {
                    keepIfBetter(moved(best, from, to));
                } else {
                    tried++;
                }
            }
        }

        private boolean lateOnesForward(SchedulingProblem shop) {
            dispatch.lay(best);
            int[] order = best;
            for (int i : late(shop, order)) {
                for (int to = i - 1; to >= 0 && tried < tries; to -= Math.max(1, i / 4)) {
                    if (keepIfBetter(moved(order, i, to))) {
                        return true;
                    }
                }
            }
            return false;
        }

        /** Moore's move: behind the late ones goes a job that takes long and is late anyway, or has time. */
        private boolean longOnesBack(SchedulingProblem shop) {
            dispatch.lay(best);
            int[] order = best;
            int[] late = late(shop, order);
            if (late.length == 0) {
                return false;
            }
            int last = late[late.length - 1];
            int[] byLength = IntStream.range(0, last)
                    .boxed()
                    .sorted(Comparator.comparingInt((Integer i) -> -length(shop, order[i])))
                    .limit(12)
                    .mapToInt(Integer::intValue)
                    .toArray();
            for (int i : byLength) {
                if (tried < tries
                        && (keepIfBetter(moved(order, i, last)) || keepIfBetter(moved(order, i, order.length - 1)))) {
                    return true;
                }
            }
            return false;
        }

        private boolean neighbours() {
            int[] order = best;
            for (int i = 0; i + 1 < order.length && tried < tries; i++) {
                if (keepIfBetter(moved(order, i, i + 1))) {
                    return true;
                }
            }
            return false;
        }

        private int[] late(SchedulingProblem shop, int[] order) {
            return IntStream.range(0, order.length)
                    .filter(i -> dispatch.finish(order[i]) > shop.due[order[i]])
                    .toArray();
        }

        private static void swap(int[] order, int i, int j) {
            int kept = order[i];
            order[i] = order[j];
            order[j] = kept;
        }
    }

    static int[] moved(int[] order, int from, int to) {
        int[] other = new int[order.length];
        int next = 0;
        for (int i = 0; i < order.length; i++) {
            if (next == to) {
                other[next++] = order[from];
            }
            if (i != from) {
                other[next++] = order[i];
            }
        }
        if (next < order.length) {
            other[next] = order[from];
        }
        return other;
    }
}
