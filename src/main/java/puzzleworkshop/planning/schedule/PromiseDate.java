package puzzleworkshop.planning.schedule;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.Journey;
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
 * Orders that wait for a picture or a payment have been promised as well, so here they have their places in the sequence
 * like the others. An earlier day is possible only at somebody's cost: {@link #sooner} says at whose.
 *
 * <p>Then the hand-over is the next one of the way of delivery, and its days on the way are added. The waiting work is
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
     * @param journey from the moment the work is done, buffer included, to the day it reaches the customer
     * @param rush the day with rush, absent when it is no earlier
     * @param narrow what it waits for most, if it waits
     * @param cause why not earlier
     */
    public record Forecast(Journey journey, Optional<LocalDate> rush, Optional<Stage.Resource> narrow, Sentence cause) {

        public LocalDateTime ready() {
            return journey.ready();
        }

        public LocalDateTime handOver() {
            return journey.leaves();
        }

        public LocalDate promised() {
            return journey.arrives();
        }
    }

    public PromiseDate(WorkingCalendar calendar, List<Job> jobs, LocalDateTime now, Scheduler scheduler) {
        this.calendar = calendar;
        this.jobs = List.copyOf(jobs);
        this.now = now;
        this.scheduler = scheduler;
        this.base = scheduler.shop(calendar, jobs, now);
        ListScheduler dispatch = new ListScheduler(base);
        dispatch.waitingLast(false);
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
        Job fresh = new Job(NEW, NO_DATE, tasks, Map.of(Stage.PRINT, from), Optional.empty(), Optional.empty(), 1);
        Job alone = fresh.withTasks(tasks.stream()
                .map(t -> t.batch().isPresent() ? t : t.inBatch("new"))
                .toList());
        Optional<Tried> normal = earlier(best(fresh, false, false), best(alone, false, true));
        Optional<Tried> rush = earlier(best(alone, true, true), normal);
        return normal.map(found -> {
            Journey journey = Journey.of(way, base.moment(afterBuffer(found.finish())), calendar.free());
            Optional<LocalDate> hurried = rush.map(r -> Journey.of(way, base.moment(r.finish()), calendar.free())
                            .arrives())
                    .filter(day -> day.isBefore(journey.arrives()));
            return new Forecast(
                    journey, hurried, found.outlook().narrow(), found.outlook().cause());
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
        ListScheduler dispatch = dispatch(shop);
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
        Schedule schedule = new ScheduleReport(shop, dispatch.laid()).schedule();
        return Optional.of(new Tried(best, schedule.of(NEW)));
    }

    private ListScheduler dispatch(SchedulingProblem shop) {
        ListScheduler dispatch = new ListScheduler(shop);
        dispatch.waitingLast(false);
        dispatch.cutsFirst(cutsFirst);
        return dispatch;
    }

    /**
     * What an earlier day would do to somebody else's order.
     *
     * @param job whose promise would suffer
     * @param daysLate calendar days by which it would then be late, 0 for some hours
     * @param lateBefore whether it is late already, without the new work
     */
    public record Harm(long job, long daysLate, boolean lateBefore) {}

    /**
     * A day that can be kept only at the cost of others.
     *
     * @param day on which it reaches the customer
     * @param harmed those who would be late, or later than now; empty when it costs them their buffers only
     */
    public record Sooner(LocalDate day, List<Harm> harmed) {

        public Sooner {
            harmed = List.copyOf(harmed);
        }
    }

    /**
     * The days before the given one on which the work could reach its customer if it went before others, and who would
     * pay for it; of all places in the sequence that keep the day the one that costs least by {@link LatenessCost}. Days
     * that no place keeps are left out.
     */
    public List<Sooner> sooner(List<Task> tasks, DeliveryWay way, LocalDate before) {
        List<Place> places = new ArrayList<>();
        for (boolean alone : new boolean[] {false, true}) {
            places.addAll(places(tasks, alone));
        }
        List<Sooner> days = new ArrayList<>();
        for (LocalDate day = now.toLocalDate(); day.isBefore(before); day = day.plusDays(1)) {
            LocalDate wanted = day;
            int due = base.minute(way.latestHandOver(day, calendar.free()));
            places.stream()
                    .filter(place -> place.finish() <= due)
                    .min(Comparator.comparingDouble(Place::cost).thenComparing(Place::finish))
                    .ifPresent(place -> days.add(new Sooner(wanted, place.harmed())));
        }
        return days;
    }

    private record Place(int finish, double cost, List<Harm> harmed) {}

    private List<Place> places(List<Task> tasks, boolean alone) {
        List<Job> all = new ArrayList<>(jobs);
        all.add(new Job(
                NEW,
                NO_DATE,
                alone ? tasks.stream().map(t -> t.inBatch("new")).toList() : tasks,
                Map.of(Stage.PRINT, now),
                Optional.empty(),
                Optional.empty(),
                1));
        SchedulingProblem shop = scheduler.shop(calendar, all, now);
        ListScheduler dispatch = dispatch(shop);
        int[] others = Arrays.stream(order).mapToInt(id -> indexOf(shop, id)).toArray();
        int mine = all.size() - 1;
        List<Place> places = new ArrayList<>();
        for (int place = 0; place <= others.length; place++) {
            dispatch.lay(with(others, mine, place));
            if (dispatch.finish(mine) < FreeTime.NEVER) {
                places.add(place(shop, dispatch, mine));
            }
        }
        return places;
    }

    private Place place(SchedulingProblem shop, ListScheduler dispatch, int mine) {
        double cost = 0;
        List<Harm> harmed = new ArrayList<>();
        for (int j = 0; j < finishBefore.length; j++) {
            int finish = dispatch.finish(j);
            cost += shop.cost(j, finish);
            if (finish > finishBefore[j] && finish > base.due[j]) {
                long days = ChronoUnit.DAYS.between(
                        jobs.get(j).due().toLocalDate(), shop.moment(finish).toLocalDate());
                harmed.add(new Harm(jobs.get(j).id(), Math.max(0, days), finishBefore[j] > base.due[j]));
            }
        }
        return new Place(dispatch.finish(mine), cost, harmed);
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
