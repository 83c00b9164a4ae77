package puzzleworkshop.planning;

import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.trials.PlannedTrials;
import puzzleworkshop.cutting.trials.TrialsPlanned;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.events.OrderChanged;
import puzzleworkshop.payments.Payments;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.schedule.Job;
import puzzleworkshop.planning.schedule.LatenessCost;
import puzzleworkshop.planning.schedule.OverloadAdvice;
import puzzleworkshop.planning.schedule.PromiseDate;
import puzzleworkshop.planning.schedule.Schedule;
import puzzleworkshop.planning.schedule.Schedule.Outlook;
import puzzleworkshop.planning.schedule.Scheduler;
import puzzleworkshop.planning.schedule.Task;
import puzzleworkshop.printing.PlannedPrints;
import puzzleworkshop.progress.Progress;
import puzzleworkshop.progress.SoFar;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.supplies.StockMoved;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/**
 * The plan of all open orders as it stands. It is made when somebody looks and kept for a few minutes, or until an order,
 * the hours, the stock or anything else it rests on changes; the same orders give the same plan. However many look at
 * once, one plan is made, and none whose making began before a change is seen after it.
 */
@Service
public class WeekPlan {

    private static final Duration KEPT = Duration.ofMinutes(5);
    private final Orders orders;
    private final WorkingTimes times;
    private final Workshop workshop;
    private final Blockers blockers;
    private final PlannedPrints prints;
    private final PlannedTrials trials;
    private final PlanStore store;
    private final Payments payments;
    private final LatenessWeights weights;
    private final Progress progress;
    private final WaitingToBeCollected collected;
    private final Clock clock;
    private final VersionedCache<LocalDate, Made> plans;

    WeekPlan(
            Orders orders,
            WorkingTimes times,
            Workshop workshop,
            Blockers blockers,
            PlannedPrints prints,
            PlannedTrials trials,
            PlanStore store,
            Payments payments,
            LatenessWeights weights,
            Progress progress,
            WaitingToBeCollected collected,
            Clock clock) {
        this.orders = orders;
        this.times = times;
        this.workshop = workshop;
        this.blockers = blockers;
        this.prints = prints;
        this.trials = trials;
        this.store = store;
        this.payments = payments;
        this.weights = weights;
        this.progress = progress;
        this.collected = collected;
        this.clock = clock;
        this.plans = VersionedCache.ofMost(2, KEPT, clock);
    }

    private static final int MOST_DAYS_TRIED = 6;

    /**
     * One order in the week.
     *
     * @param outlook what the plan means for it
     * @param way by which it leaves
     * @param pinned the day it was put on, if it was
     * @param toBeCollected packed, and its customer may come for it: its promise is kept
     */
    public record Entry(
            Order order, Outlook outlook, DeliveryWay way, Optional<LocalDate> pinned, boolean toBeCollected) {}

    /**
     * The plan with its orders.
     *
     * @param today in the workshop's zone
     * @param entries by the day promised
     */
    public record Standing(LocalDate today, List<Entry> entries, Schedule plan, WorkingCalendar calendar) {

        public Optional<Entry> of(OrderId order) {
            return entries.stream()
                    .filter(entry -> entry.order().id().equals(order))
                    .findFirst();
        }
    }

    private final class Made {
        final LocalDateTime at;
        final WorkingCalendar calendar;
        final List<Job> jobs;
        final Scheduler scheduler;
        final WorkOfOrders work;
        final Standing standing;
        private Optional<OverloadAdvice> relief;
        private PromiseDate promise;

        Made(LocalDateTime at) {
            this.at = at;
            this.calendar = times.calendar();
            List<Order> open = orders.open();
            Set<OrderId> ready = collected.orders();
            LatenessCost cost = weights.cost();
            this.work = new WorkOfOrders(workshop.stageStandards(), calendar, at, workshop.zone(), cost);
            this.scheduler = Scheduler.usual(bufferMinutes(calendar), cost);
            Set<OrderId> paid = payments.withMoney(open.stream().map(Order::id).toList());
            Map<OrderId, LocalDate> pins = store.pins();
            Map<OrderId, DeliveryWay> ways = waysOf(open);
            Map<OrderId, SoFar> soFar =
                    progress.soFar(open.stream().map(Order::id).toList());
            Map<OrderId, Job.Wait> held = blockers.of(open, soFar, work.nextMorning());
            Map<OrderId, Map<Stage, String>> together = together();
            Map<OrderId, Minutes> trialMinutes = trials.minutesByOrder();
            this.jobs = open.stream()
                    .map(order -> {
                        Job job = work.job(
                                order,
                                ways.get(order.id()),
                                Optional.ofNullable(pins.get(order.id())),
                                Optional.ofNullable(held.get(order.id())),
                                together.getOrDefault(order.id(), Map.of()),
                                Optional.ofNullable(soFar.get(order.id())),
                                trialMinutes.getOrDefault(order.id(), Minutes.ZERO),
                                paid.contains(order.id()));
                        return isToBeCollected(order, ready) ? job.dueBy(at.plusYears(1)) : job;
                    })
                    .toList();
            Schedule plan = scheduler.plan(calendar, jobs, at);
            this.standing = new Standing(
                    at.toLocalDate(),
                    open.stream()
                            .map(order -> new Entry(
                                    order,
                                    plan.of(order.id().value()),
                                    ways.get(order.id()),
                                    Optional.ofNullable(pins.get(order.id())),
                                    isToBeCollected(order, ready)))
                            .toList(),
                    plan,
                    calendar);
        }

        synchronized Optional<OverloadAdvice> relief() {
            if (relief == null) {
                relief = OverloadAdvice.of(scheduler, calendar, jobs, at, standing.plan());
            }
            return relief;
        }

        synchronized PromiseDate promise() {
            if (promise == null) {
                promise = new PromiseDate(calendar, jobs, at, scheduler);
            }
            return promise;
        }
    }

    private static boolean isToBeCollected(Order order, Set<OrderId> ready) {
        return ready.contains(order.id()) && order.next().equals(Optional.of(Stage.HAND_OVER));
    }

    /** The plan as it stands now. */
    public Standing now() {
        return made().standing;
    }

    /** What gives, if something must; takes up to about a second, so ask for it off the screen's thread. */
    public Optional<OverloadAdvice> relief() {
        return made().relief();
    }

    /** Puts the main work of an order on a day; the plan keeps it there and moves the others around it. */
    @Transactional
    public void pin(OrderId id, LocalDate day, String who) {
        Order order = orders.lock(id);
        if (day.isBefore(today())) {
            throw new Refused("planning.pin.past", day);
        }
        if (!times.calendar().isWorkingDay(day)) {
            throw new Refused("planning.pin.free-day", day);
        }
        if (order.next().isEmpty()) {
            throw new Refused("planning.pin.not-open", order.number());
        }
        store.pin(id, day, who, clock.instant());
        orders.note(id, Sentence.of("planning.history.pinned", day), who);
    }

    /** Lets the plan choose the day again. */
    @Transactional
    public void unpin(OrderId id, String who) {
        orders.lock(id);
        if (store.unpin(id)) {
            orders.note(id, Sentence.of("planning.history.unpinned"), who);
        }
    }

    /** The day on which new work reaches its customer, and the same with rush, if its picture is approved today. */
    public Optional<ReadyDay> forecast(NewWork work) {
        Made made = made();
        return forecast(made, made.promise(), work);
    }

    /** The same for the work of an order that is changed: it takes the place of what the plan has of it. */
    public Optional<ReadyDay> forecastInstead(OrderId order, NewWork work) {
        Made made = made();
        List<Job> others =
                made.jobs.stream().filter(job -> job.id() != order.value()).toList();
        PromiseDate promise = others.size() == made.jobs.size()
                ? made.promise()
                : new PromiseDate(made.calendar, others, made.at, made.scheduler);
        return forecast(made, promise, work);
    }

    private Optional<ReadyDay> forecast(Made made, PromiseDate promise, NewWork work) {
        DeliveryWay way = way(work.way(), times.ways());
        List<Task> tasks = made.work.tasks(work);
        return promise.forecast(tasks, way)
                .map(found -> new ReadyDay(
                        found.promised(),
                        found.rush(),
                        found.cause(),
                        promise.sooner(tasks, way, found.promised()).stream()
                                .map(sooner -> new ReadyDay.Sooner(sooner.day(), named(made, sooner.harmed())))
                                .toList()));
    }

    private static List<ReadyDay.Harm> named(Made made, List<PromiseDate.Harm> harmed) {
        return harmed.stream()
                .flatMap(harm -> made
                        .standing
                        .of(new OrderId(harm.job()))
                        .map(entry -> new ReadyDay.Harm(
                                entry.order().number(),
                                entry.order().customer().name(),
                                harm.daysLate(),
                                harm.lateBefore()))
                        .stream())
                .toList();
    }

    /** The ways by which an order can reach its customer, the usual one first. */
    public List<DeliveryWay> ways() {
        return times.ways();
    }

    /** The day on which an order reaches its customer by the plan; empty when it finds no place in the calendar. */
    public Optional<LocalDate> reaches(Entry entry) {
        if (entry.outlook().finish().equals(Schedule.NEVER)) {
            return Optional.empty();
        }
        Set<LocalDate> holidays = now().calendar().holidays();
        LocalDate leaves =
                entry.way().leaves(entry.outlook().finish(), holidays).toLocalDate();
        return Optional.of(entry.way().arrives(leaves, holidays));
    }

    /**
     * The day to promise an order instead: the first one that the plan, made again with it, keeps. With more time the
     * order costs less to put off, so the day it reaches now need not be one that it still reaches then.
     */
    public Optional<LocalDate> keeps(Entry entry) {
        Made made = made();
        long id = entry.order().id().value();
        Optional<LocalDate> day = reaches(entry);
        for (int tried = 0; tried < MOST_DAYS_TRIED && day.isPresent(); tried++) {
            LocalDateTime due = entry.way().latestHandOver(day.get(), made.calendar.holidays());
            List<Job> asked = made.jobs.stream()
                    .map(job -> job.id() == id ? job.dueBy(due) : job)
                    .toList();
            Outlook then = made.scheduler.plan(made.calendar, asked, made.at).of(id);
            Optional<LocalDate> reached =
                    reaches(new Entry(entry.order(), then, entry.way(), entry.pinned(), entry.toBeCollected()));
            if (reached.isEmpty() || !reached.get().isAfter(day.get())) {
                return day;
            }
            day = reached;
        }
        return day;
    }

    private static DeliveryWay way(Optional<Long> chosen, List<DeliveryWay> ways) {
        return chosen.flatMap(id -> ways.stream().filter(way -> way.id() == id).findFirst())
                .orElseGet(ways::getFirst);
    }

    public LocalDate today() {
        return workshop.today();
    }

    /** Whether the plan has to be looked at again after this change. */
    public static boolean restsOn(Change change) {
        return change instanceof OrderChanged
                || change instanceof WorkingTimes.HoursChanged
                || change instanceof Workshop.WorkshopChanged
                || change instanceof StockMoved
                || change instanceof PlannedPrints.PrintsMoved
                || change instanceof TrialsPlanned;
    }

    /** Before the screens that listen to the same news look at the plan. */
    @EventListener
    @org.springframework.core.annotation.Order(Ordered.HIGHEST_PRECEDENCE)
    void changed(Change change) {
        if (restsOn(change)) {
            plans.forget();
        }
    }

    private Made made() {
        LocalDateTime at = LocalDateTime.now(clock.withZone(workshop.zone())).truncatedTo(ChronoUnit.MINUTES);
        return plans.get(at.toLocalDate(), () -> new Made(at));
    }

    private int bufferMinutes(WorkingCalendar calendar) {
        int perDay = calendar.people().stream()
                .mapToInt(person -> person.hours().minutesAWeek()
                        / Math.max(1, person.hours().byDay().size()))
                .max()
                .orElse(0);
        return perDay * workshop.tradeNumbers().bufferDays();
    }

    private Map<OrderId, DeliveryWay> waysOf(List<Order> open) {
        List<DeliveryWay> known = times.ways();
        Map<OrderId, DeliveryWay> ways = new HashMap<>();
        open.forEach(order -> ways.put(order.id(), way(order.deliveryWay(), known)));
        return ways;
    }

    /** Prints of a run are made in one go, and laminated in one go after it. */
    private Map<OrderId, Map<Stage, String>> together() {
        Map<OrderId, Map<Stage, String>> batches = new HashMap<>();
        for (PlannedPrints.InRun in : prints.inRuns()) {
            Map<Stage, String> mine = batches.computeIfAbsent(in.order(), order -> new EnumMap<>(Stage.class));
            String run = "run-" + in.run();
            if (in.printed()) {
                mine.putIfAbsent(Stage.LAMINATE, run);
            } else {
                mine.put(Stage.PRINT, run);
                mine.put(Stage.LAMINATE, run);
            }
        }
        return batches;
    }
}
