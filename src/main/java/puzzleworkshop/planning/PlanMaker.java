package puzzleworkshop.planning;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Component;
import puzzleworkshop.cutting.trials.PlannedTrials;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.payments.Payments;
import puzzleworkshop.planning.WeekPlan.Entry;
import puzzleworkshop.planning.WeekPlan.Standing;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.schedule.Job;
import puzzleworkshop.planning.schedule.LatenessCost;
import puzzleworkshop.planning.schedule.Schedule;
import puzzleworkshop.planning.schedule.Scheduler;
import puzzleworkshop.printing.PlannedPrints;
import puzzleworkshop.progress.Progress;
import puzzleworkshop.progress.SoFar;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** Makes the plan of all open orders from what the rooms below know of them at a moment; the same facts give the same plan. */
@Component
class PlanMaker {

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

    PlanMaker(
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
            WaitingToBeCollected collected) {
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
    }

    /** @param at in the workshop's zone */
    MadePlan make(LocalDateTime at) {
        WorkingCalendar calendar = times.calendar();
        List<Order> open = orders.open();
        Set<OrderId> ready = collected.orders();
        LatenessCost cost = weights.cost();
        WorkOfOrders work = new WorkOfOrders(workshop.stageStandards(), calendar, at, workshop.zone(), cost);
        Scheduler scheduler = Scheduler.usual(bufferMinutes(calendar), cost);
        Set<OrderId> paid = payments.withMoney(open.stream().map(Order::id).toList());
        Map<OrderId, LocalDate> pins = store.pins();
        Map<OrderId, DeliveryWay> ways = waysOf(open);
        Map<OrderId, SoFar> soFar = progress.soFar(open.stream().map(Order::id).toList());
        Map<OrderId, Job.Wait> held = blockers.of(open, soFar, work.nextMorning());
        Map<OrderId, Map<Stage, String>> together = together(open);
        Map<OrderId, Minutes> trialMinutes = trials.minutesByOrder();
        List<Job> jobs = open.stream()
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
        Standing standing = new Standing(
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
        return new MadePlan(at, calendar, jobs, scheduler, work, standing);
    }

    /** Packed and only to be fetched: its promise is kept, so nothing is late about it and it presses nobody. */
    private static boolean isToBeCollected(Order order, Set<OrderId> ready) {
        return ready.contains(order.id()) && order.next().equals(Optional.of(Stage.HAND_OVER));
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
        open.forEach(order -> ways.put(order.id(), WeekPlan.way(order.deliveryWay(), known)));
        return ways;
    }

    /** Prints of a run are made in one go, and laminated in one go after it. */
    private Map<OrderId, Map<Stage, String>> together(List<Order> open) {
        Map<OrderId, Map<Stage, String>> batches = new HashMap<>();
        for (PlannedPrints.InRun in : prints.inRuns(open.stream().map(Order::id).toList())) {
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
