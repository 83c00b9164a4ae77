package puzzleworkshop.bench;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.context.event.EventListener;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.boards.OrderBoards;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.CutMoved;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderCancelled;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.sheets.Cut;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;
import puzzleworkshop.workshop.Workshop;

/** One order at a time, one transaction at a time: ticks, ticks taken back, work that has to be made again. */
@Component
class StageTransitions {

    static final Duration UNDO_WITHIN = Duration.ofMinutes(15);

    private final BenchStore store;
    private final Orders orders;
    private final SheetRack rack;
    private final OrderBoards boards;
    private final StageConsumption usedUp;
    private final EarlyWorkNotes beforeItsTime;
    private final Workshop workshop;
    private final AfterCommit afterCommit;
    private final Machines machines;
    private final CutJobs cutJobs;
    private final Clock clock;

    StageTransitions(
            BenchStore store,
            Orders orders,
            SheetRack rack,
            OrderBoards boards,
            StageConsumption usedUp,
            EarlyWorkNotes beforeItsTime,
            Workshop workshop,
            AfterCommit afterCommit,
            Machines machines,
            CutJobs cutJobs,
            Clock clock) {
        this.store = store;
        this.orders = orders;
        this.rack = rack;
        this.boards = boards;
        this.usedUp = usedUp;
        this.beforeItsTime = beforeItsTime;
        this.workshop = workshop;
        this.afterCommit = afterCommit;
        this.machines = machines;
        this.cutJobs = cutJobs;
        this.clock = clock;
    }

    @Transactional
    public void tick(OrderId id, Stage stage, String who, String device) {
        Order order = orders.lock(id);
        if (order.next().equals(Optional.of(stage))) {
            Instant now = clock.instant();
            store.stop(id, who, now);
            if (stage == Stage.CUT) {
                requireRecordedCut(order);
                boards.cut(id, freshBoardSince(order), who);
            }
            usedUp.at(stage, order, who);
            beforeItsTime.note(order, stage, who);
            try {
                store.insertTick(id, stage, who, device, store.book(id, stage), now);
            } catch (DataIntegrityViolationException refused) {
                throw new Refused("bench.tick.meanwhile", order.number(), Sentence.of(stage.textKey()));
            }
            afterCommit.tell(new Ticked(id, stage, Ticked.Kind.DONE, now, who));
        }
        // Where it is not this stage's turn, the order says who did it and when, or what comes first.
        orders.completeStage(id, stage, who);
    }

    /** With a laser on the list, a cut is ticked only after its checklist and outcome stand on record. */
    private void requireRecordedCut(Order order) {
        if (machines.standard().isPresent() && recordedCut(order).isEmpty()) {
            throw new Refused("bench.cut.not-recorded", order.number());
        }
    }

    /** The newest cut of the order, if it was cut to the end since it last began anew. */
    Optional<CutJob> recordedCut(Order order) {
        List<Rework> mishaps = store.mishaps(order.id());
        Instant since = mishaps.isEmpty() ? Instant.EPOCH : mishaps.getLast().at();
        return cutJobs.lastFor(order.id().value())
                .filter(job -> job.state() == CutJob.State.DONE)
                .filter(job ->
                        job.ended().filter(ended -> !ended.at().isBefore(since)).isPresent());
    }

    /** When the order last began anew with another board; what was cut before is of no use since. */
    private Instant freshBoardSince(Order order) {
        return store.mishaps(order.id()).stream()
                .filter(mishap -> mishap.againFrom().compareTo(Stage.MASK) < 0)
                .map(Rework::at)
                .reduce((one, later) -> later)
                .orElse(Instant.EPOCH);
    }

    Optional<Tick> undoable(OrderId id) {
        Optional<Order> order = orders.find(id);
        return store.ticks(id).stream()
                .filter(tick -> !tick.undone())
                .reduce((one, other) -> other)
                .filter(tick -> tick.at().plus(UNDO_WITHIN).isAfter(clock.instant()))
                .filter(tick -> order.map(o -> follows(o, tick.stage())).orElse(false));
    }

    /** The ticks of all orders that can still be taken back, newest first. */
    List<Tick> undoable() {
        List<Tick> last = store.lastSince(clock.instant().minus(UNDO_WITHIN));
        Map<OrderId, Order> known = orders.all(last.stream().map(Tick::order).toList()).stream()
                .collect(Collectors.toMap(Order::id, Function.identity()));
        return last.stream()
                .filter(tick -> follows(known.get(tick.order()), tick.stage()))
                .toList();
    }

    /** Whether the order stands right behind the stage. */
    private static boolean follows(Order order, Stage stage) {
        return order.next().map(next -> next.ordinal() == stage.ordinal() + 1).orElse(stage == Stage.HAND_OVER);
    }

    @Transactional
    public void undo(OrderId id, String who) {
        Order order = orders.lock(id);
        Tick tick = undoable(id)
                .orElseThrow(() -> new Refused("bench.undo.too-late", order.number(), UNDO_WITHIN.toMinutes()));
        if (tick.stage() == Stage.CUT) {
            rack.cutsOf(id).stream()
                    .filter(cut -> !cut.undone() && !cut.at().isBefore(tick.at().minusSeconds(60)))
                    .map(Cut::id)
                    .forEach(cut -> boards.undo(cut, who));
        }
        usedUp.backFrom(tick.stage(), order, who);
        store.undo(tick, who, clock.instant());
        store.stop(id, who, clock.instant());
        orders.sendBack(
                id,
                tick.stage(),
                Sentence.of("bench.history.undone", Sentence.of(tick.stage().textKey())),
                who);
        afterCommit.tell(new Ticked(id, tick.stage(), Ticked.Kind.UNDONE, clock.instant(), who));
    }

    @Transactional
    public Rework wentWrong(OrderId id, Rework.Report report, String who) {
        Order order = orders.lock(id);
        Rework mishap = reckon(order, report, who);
        store.stop(id, who, clock.instant());
        // What the clock showed belongs to the work that is lost, not to the next attempt.
        store.book(id, mishap.noticedAt());
        if (report.boardSpoiled()) {
            boards.spoil(id, report.note().isBlank() ? "spoiled" : report.note(), who);
        }
        long number = store.insert(mishap);
        Sentence why = Sentence.of(
                "bench.history.wrong",
                Sentence.of(mishap.what().textKey()),
                Sentence.of(mishap.noticedAt().textKey()),
                Sentence.of(mishap.againFrom().textKey()),
                mishap.workLost(),
                mishap.materialLost());
        if (order.next().equals(Optional.of(mishap.againFrom()))) {
            orders.note(id, why, who);
        } else {
            orders.sendBack(id, mishap.againFrom(), why, who);
        }
        afterCommit.tell(new Ticked(id, mishap.noticedAt(), Ticked.Kind.WENT_WRONG, clock.instant(), who));
        return new Rework(
                number,
                id,
                mishap.noticedAt(),
                mishap.againFrom(),
                mishap.what(),
                mishap.note(),
                mishap.boardSpoiled(),
                mishap.handsLost(),
                mishap.laserLost(),
                mishap.materialLost(),
                mishap.at(),
                who);
    }

    /**
     * What is lost: the work of the stages that are made again, by the clock where one ran and by the standards where
     * none did; the laser's time if it has cut; what was used up since the last new beginning, when the print is lost.
     */
    Rework reckon(Order order, Rework.Report report, String who) {
        Stage noticed = order.next().orElse(Stage.HAND_OVER);
        if (report.againFrom().compareTo(noticed) > 0) {
            throw new Refused("bench.wrong.forwards", order.number(), Sentence.of(noticed.textKey()));
        }
        OrderId id = order.id();
        Instant lastBeginning =
                store.mishaps(id).stream().map(Rework::at).reduce((a, b) -> b).orElse(Instant.EPOCH);
        List<Tick> ticks = store.ticks(id).stream()
                .filter(tick -> !tick.undone()
                        && !tick.stage().equals(noticed)
                        && tick.at().isAfter(lastBeginning))
                .filter(tick -> tick.stage().compareTo(report.againFrom()) >= 0)
                .toList();
        Minutes hands = Minutes.ZERO;
        Minutes laser = Minutes.ZERO;
        for (Tick tick : ticks) {
            StageStandard standard = workshop.stageStandards().get(tick.stage());
            hands = hands.plus(tick.minutes()
                    .orElseGet(() ->
                            standard.hands(order.quantity(), order.puzzle().pieces())));
            laser = tick.stage() == Stage.CUT ? laser.plus(order.laser()) : laser;
        }
        Minutes onTheClock = store.running().stream()
                .filter(running -> running.order().equals(id))
                .map(running -> Minutes.of(Duration.between(running.since(), clock.instant())))
                .reduce(Minutes.ZERO, Minutes::plus);
        hands = hands.plus(onTheClock);
        if (noticed == Stage.CUT) {
            laser = laser.plus(
                    Minutes.of(Math.min(onTheClock.value(), order.laser().value())));
        }
        Money material = report.materialLost().orElseGet(() -> material(order, report, lastBeginning));
        if (material.isNegative()) {
            throw new Refused("bench.wrong.negative");
        }
        return new Rework(
                0,
                id,
                noticed,
                report.againFrom(),
                report.what(),
                report.note().strip(),
                report.boardSpoiled(),
                hands,
                laser,
                material,
                clock.instant(),
                who);
    }

    private Money material(Order order, Rework.Report report, Instant since) {
        Money lost = Money.zero(workshop.currency());
        OrderId id = order.id();
        if (report.againFrom().compareTo(Stage.STICK) <= 0) {
            lost = lost.plus(usedUp.costSince(order, since)).plus(printWithoutLedger(order, report, since));
            for (Cut cut : rack.cutsOf(id)) {
                lost = !cut.undone() && cut.at().isAfter(since) ? lost.plus(cut.blankCost()) : lost;
            }
        }
        if (report.boardSpoiled()) {
            for (Sheet board : rack.heldFor(id)) {
                lost = lost.plus(board.cost());
            }
        }
        return lost.rounded();
    }

    /** A print that was made but not booked from the shelf is worth what it was reckoned to cost. */
    private Money printWithoutLedger(Order order, Rework.Report report, Instant since) {
        boolean printed = report.againFrom() == Stage.PRINT
                && store.ticks(order.id()).stream()
                        .anyMatch(tick -> !tick.undone()
                                && tick.stage() == Stage.PRINT
                                && tick.at().isAfter(since));
        Money zero = Money.zero(workshop.currency());
        Money reckoned = orders.keptPrice(order.id()).answer().costs().of(CostPart.PRINT);
        return printed
                        && !usedUp.printedSince(order, since)
                        && reckoned.currency().equals(zero.currency())
                ? reckoned
                : zero;
    }

    /** Nobody leaves a cut alone, so the clock of the hands runs with the beam, and is started and stopped by it. */
    @EventListener
    @Transactional
    public void cutMoved(CutMoved event) {
        if (event.job().orderId().isEmpty()) {
            return;
        }
        OrderId id = new OrderId(event.job().orderId().getAsLong());
        Instant now = clock.instant();
        boolean atTheLaser = orders.lock(id).next().equals(Optional.of(Stage.CUT));
        if (event.job().state() != CutJob.State.RUNNING) {
            store.stop(id, event.by(), now);
        } else if (atTheLaser
                && store.running().stream().noneMatch(running -> running.order().equals(id))) {
            store.start(id, Stage.CUT, event.by(), now);
        }
        afterCommit.tell(new Ticked(id, Stage.CUT, Ticked.Kind.CLOCK, now, event.by()));
    }

    @EventListener
    @Transactional
    public void givenUp(OrderCancelled event) {
        store.stop(event.order(), event.who(), clock.instant());
    }
}
