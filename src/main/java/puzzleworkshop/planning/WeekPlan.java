package puzzleworkshop.planning;

import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.trials.TrialsPlanned;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.events.OrderChanged;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.Journey;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.schedule.Job;
import puzzleworkshop.planning.schedule.OverloadAdvice;
import puzzleworkshop.planning.schedule.PromiseDate;
import puzzleworkshop.planning.schedule.Schedule;
import puzzleworkshop.planning.schedule.Schedule.Outlook;
import puzzleworkshop.planning.schedule.Task;
import puzzleworkshop.printing.PlannedPrints;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.supplies.StockMoved;
import puzzleworkshop.workshop.Workshop;

/**
 * The plan of all open orders as it stands. It is made when somebody looks and kept for a few minutes, or until an order,
 * the hours, the stock or anything else it rests on changes; the same orders give the same plan. However many look at
 * once, one plan is made, and none whose making began before a change is seen after it.
 */
@Service
public class WeekPlan {

    private static final Duration KEPT = Duration.ofMinutes(5);
    private static final int MOST_DAYS_TRIED = 6;

    private final Orders orders;
    private final WorkingTimes times;
    private final Workshop workshop;
    private final PlanStore store;
    private final PlanMaker maker;
    private final Clock clock;
    private final VersionedCache<LocalDate, MadePlan> plans;

    WeekPlan(Orders orders, WorkingTimes times, Workshop workshop, PlanStore store, PlanMaker maker, Clock clock) {
        this.orders = orders;
        this.times = times;
        this.workshop = workshop;
        this.store = store;
        this.maker = maker;
        this.clock = clock;
        this.plans = VersionedCache.ofMost(2, KEPT, clock);
    }

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
        MadePlan made = made();
        return forecast(made, made.promise(), work);
    }

    /** The same for the work of an order that is changed: it takes the place of what the plan has of it. */
    public Optional<ReadyDay> forecastInstead(OrderId order, NewWork work) {
        MadePlan made = made();
        return forecast(made, made.promiseWithout(order.value()), work);
    }

    private Optional<ReadyDay> forecast(MadePlan made, PromiseDate promise, NewWork work) {
        DeliveryWay way = way(work.way(), times.ways());
        List<Task> tasks = made.work.tasks(work);
        return promise.forecast(tasks, way)
                .map(found -> new ReadyDay(
                        found.promised(),
                        found.rush(),
                        found.cause(),
                        found.journey().why(),
                        promise.sooner(tasks, way, found.promised()).stream()
                                .map(sooner -> new ReadyDay.Sooner(sooner.day(), named(made, sooner.harmed())))
                                .toList()));
    }

    private static List<ReadyDay.Harm> named(MadePlan made, List<PromiseDate.Harm> harmed) {
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
        return Optional.of(Journey.of(
                        entry.way(), entry.outlook().finish(), now().calendar().free())
                .arrives());
    }

    /**
     * The day to promise an order instead: the first one that the plan, made again with it, keeps. With more time the
     * order costs less to put off, so the day it reaches now need not be one that it still reaches then.
     */
    public Optional<LocalDate> keeps(Entry entry) {
        MadePlan made = made();
        long id = entry.order().id().value();
        Optional<LocalDate> day = reaches(entry);
        for (int tried = 0; tried < MOST_DAYS_TRIED && day.isPresent(); tried++) {
            LocalDateTime due = entry.way().latestHandOver(day.get(), made.calendar.free());
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

    static DeliveryWay way(Optional<Long> chosen, List<DeliveryWay> ways) {
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

    private MadePlan made() {
        LocalDateTime at = LocalDateTime.now(clock.withZone(workshop.zone())).truncatedTo(ChronoUnit.MINUTES);
        return plans.get(at.toLocalDate(), () -> maker.make(at));
    }
}
