package puzzleworkshop.planning.schedule;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.schedule.Schedule.Outlook;
import puzzleworkshop.workshop.Stage;

/**
 * Which date can be promised for one more order. The new work is tried at every place in the sequence of the waiting
 * work; the earliest finish counts at which nobody else's promise suffers.
 *
 * <ul>
 *   <li>Without rush the others keep their buffers too, and the new order gets one of its own.
 *   <li>With rush the others only keep their dates, and the new order has no buffer. It is printed on its own rather
 *       than waiting for a gang run.
 * </ul>
 *
 * Then the hand-over is the next one of the way of delivery, and its days on the way are added. The waiting work is
 * planned once; a forecast after that tries one plan per place in the sequence.
 */
public final class PromiseDate {

    /** Stands for the new job among those of the plan. */
    private static final long NEW = Long.MIN_VALUE;

    private static final LocalDateTime NO_DATE = LocalDateTime.of(9000, 1, 1, 0, 0);

    private final WorkingCalendar calendar;
    private final List<Job> jobs;
    private final LocalDateTime now;
    private final Scheduler scheduler;
    private final SchedulingProblem base;
    private final long[] order;
    private final boolean cutsFirst;
    private final int[] finishBefore;
    private final int[] spareUntil;

    /**
     * What can be promised.
     *
     * @param ready when the work is done, buffer included
     * @param handOver when it is handed over
     * @param promised the day it reaches the customer
     * @param rush the day with rush, absent when it is no earlier
     * @param narrow what it waits for most, if it waits
     * @param cause why not earlier
     */
    public record Forecast(
            LocalDateTime ready,
            LocalDateTime handOver,
            LocalDate promised,
            Optional<LocalDate> rush,
            Optional<Stage.Resource> narrow,
            Sentence cause) {}

    public PromiseDate(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now, Scheduler scheduler) {
        this.calendar = calendar;
        this.jobs = List.copyOf(jobs);
        this.now = now;
        this.scheduler = scheduler;
        this.base = scheduler.shop(calendar, jobs, now);
        ListScheduler dispatch = new ListScheduler(base);
        int[] best = scheduler.search(base, dispatch);
        dispatch.lay(best);
        cutsFirst = dispatch.cutsFirst();
        order = Arrays.stream(best).mapToLong(j -> base.jobs.get(j).id()).toArray();
        finishBefore = new int[jobs.size()];
        spareUntil = new int[jobs.size()];
        for (int j = 0; j < jobs.size(); j++) {
            finishBefore[j] = dispatch.finish(j);
            spareUntil[j] = latestWithBuffer(base, base.due[j]);
        }
    }

    /** The forecast for work that can begin at once. */
    public Optional<Forecast> forecast(List<Task> tasks, DeliveryWay way) {
        return forecast(tasks, now, way);
    }

    /**
     * Empty when nobody works, so that no date can be given.
     *
     * @param from the work cannot begin before
     */
    public Optional<Forecast> forecast(List<Task> tasks, LocalDateTime from, DeliveryWay way) {
        Job fresh = new Job(NEW, NO_DATE, tasks, Optional.of(from), Optional.empty(), Optional.empty(), 1);
        Job alone = fresh.withTasks(tasks.stream()
                .map(t -> t.batch().isPresent() ? t : t.inBatch("new"))
                .toList());
        Optional<Tried> normal = earlier(best(fresh, false, false), best(alone, false, true));
        Optional<Tried> rush = earlier(best(alone, true, true), normal);
        return normal.map(found -> {
            LocalDateTime ready = base.moment(afterBuffer(found.finish()));
            LocalDateTime handOver = way.leaves(ready, calendar.holidays());
            LocalDate promised = way.arrives(handOver.toLocalDate(), calendar.holidays());
            Optional<LocalDate> hurried = rush.map(r -> way.leaves(base.moment(r.finish()), calendar.holidays()))
                    .map(leaves -> way.arrives(leaves.toLocalDate(), calendar.holidays()))
                    .filter(day -> day.isBefore(promised));
            return new Forecast(
                    ready,
                    handOver,
                    promised,
                    hurried,
                    found.outlook().narrow(),
                    found.outlook().cause());
        });
    }

    private record Tried(int finish, Outlook outlook) {}

    private static Optional<Tried> earlier(Optional<Tried> one, Optional<Tried> other) {
        return Stream.of(one, other).flatMap(Optional::stream).min(Comparator.comparingInt(Tried::finish));
    }

    /** The earliest harmless finish of the job; its place behind all others is always harmless when it is on its own. */
    private Optional<Tried> best(Job fresh, boolean rush, boolean lastIsHarmless) {
        List<Job> all = new ArrayList<>(jobs);
        all.add(fresh);
        SchedulingProblem shop = scheduler.shop(calendar, all, now);
        ListScheduler dispatch = new ListScheduler(shop);
        dispatch.cutsFirst(cutsFirst);
        int[] others = Arrays.stream(order).mapToInt(id -> indexOf(shop, id)).toArray();
        int mine = all.size() - 1;
        int best = FreeTime.NEVER;
        int[] bestOrder = null;
        boolean bestBehindAll = false;
        for (int place = 0; place <= others.length; place++) {
            boolean behindAll = lastIsHarmless && place == others.length;
            int[] tried = with(others, mine, place);
            dispatch.behindAll(behindAll ? mine : -1);
            dispatch.lay(tried);
            if (dispatch.finish(mine) < best && (behindAll || harmless(shop, dispatch, rush))) {
                best = dispatch.finish(mine);
                bestOrder = tried;
                bestBehindAll = behindAll;
            }
        }
        if (bestOrder == null) {
            return Optional.empty();
        }
        dispatch.behindAll(bestBehindAll ? mine : -1);
        dispatch.lay(bestOrder);
        Schedule schedule = new ScheduleReport(shop, dispatch).schedule();
        return Optional.of(new Tried(best, schedule.of(NEW)));
    }

    private boolean harmless(SchedulingProblem shop, ListScheduler dispatch, boolean rush) {
        for (int j = 0; j < finishBefore.length; j++) {
            int finish = dispatch.finish(j);
            boolean promiseKept = finish <= base.due[j] && (rush || finish <= spareUntil[j]);
            if (finish > finishBefore[j] && !promiseKept) {
                return false;
            }
        }
        return true;
    }

    private static int[] with(int[] others, int mine, int place) {
        int[] all = new int[others.length + 1];
        System.arraycopy(others, 0, all, 0, place);
        all[place] = mine;
        System.arraycopy(others, place, all, place + 1, others.length - place);
        return all;
    }

    private static int indexOf(SchedulingProblem shop, long id) {
        for (int j = 0; j < shop.jobs.size(); j++) {
            if (shop.jobs.get(j).id() == id) {
                return j;
            }
        }
        throw new IllegalStateException("Job " + id + " has left the shop");
    }

    private int afterBuffer(int finish) {
        int earliest = FreeTime.NEVER;
        for (int p = SchedulingProblem.FIRST_PERSON; p < base.open.length; p++) {
            earliest = Math.min(earliest, base.open[p].endOfSpread(finish, scheduler.bufferMinutes()));
        }
        return earliest == FreeTime.NEVER ? finish : earliest;
    }

    /** The last finish that leaves the buffer before the due moment. */
    private int latestWithBuffer(SchedulingProblem shop, int due) {
        int low = shop.now;
        int high = due;
        if (high <= low || open(shop, low, high) < scheduler.bufferMinutes()) {
            return Integer.MIN_VALUE;
        }
        while (low < high) {
            int middle = low + (high - low + 1) / 2;
            if (open(shop, middle, due) >= scheduler.bufferMinutes()) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    private static int open(SchedulingProblem shop, int from, int to) {
        int most = 0;
        for (int p = SchedulingProblem.FIRST_PERSON; p < shop.open.length; p++) {
            most = Math.max(most, shop.open[p].between(from, to));
        }
        return most;
    }
}
