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
import puzzleworkshop.boards.BoardCuts;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.CutMoved;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.events.OrderCancelled;
import puzzleworkshop.progress.Progress;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.progress.Tick;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.sheets.Cut;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.Stage;

/** One order at a time, one transaction at a time: ticks, ticks taken back, work that has to be made again. */
@Component
class StageTransitions {

    static final Duration UNDO_WITHIN = Duration.ofMinutes(15);

    private final Progress progress;
    private final Bookings bookings;
    private final Orders orders;
    private final SheetRack rack;
    private final RunPrints runPrints;
    private final BoardCuts cuts;
    private final StageConsumption usedUp;
    private final LostWork lost;
    private final EarlyWorkNotes beforeItsTime;
    private final AfterCommit afterCommit;
    private final Machines machines;
    private final CutJobs cutJobs;
    private final Clock clock;

    StageTransitions(
            Progress progress,
            Bookings bookings,
            Orders orders,
            SheetRack rack,
            RunPrints runPrints,
            BoardCuts cuts,
            StageConsumption usedUp,
            LostWork lost,
            EarlyWorkNotes beforeItsTime,
            AfterCommit afterCommit,
            Machines machines,
            CutJobs cutJobs,
            Clock clock) {
        this.progress = progress;
        this.bookings = bookings;
        this.orders = orders;
        this.rack = rack;
        this.runPrints = runPrints;
        this.cuts = cuts;
        this.usedUp = usedUp;
        this.lost = lost;
        this.beforeItsTime = beforeItsTime;
        this.afterCommit = afterCommit;
        this.machines = machines;
        this.cutJobs = cutJobs;
        this.clock = clock;
    }

    @Transactional
    public void tick(BookingKey key, OrderId id, Stage stage, String who, String device) {
        bookings.once(key, "tick " + stage + " of order " + id, () -> tick(id, stage, who, device, false));
    }

    /** Within the booking of a print run, which books paper and film itself. */
    void tickPrinted(OrderId id, String who, String device) {
        tick(id, Stage.PRINT, who, device, true);
    }

    private void tick(OrderId id, Stage stage, String who, String device, boolean consumed) {
        Order order = orders.lock(id);
        if (order.next().equals(Optional.of(stage))) {
            Instant now = clock.instant();
            progress.stop(id, who, now);
            if (stage == Stage.CUT) {
                requireRecordedCut(order);
                cuts.cut(id, freshBoardSince(order), who);
            }
            if (!consumed && stage == Stage.PRINT) {
                runPrints.requireNoneOpen(id);
            }
            if (!consumed && !bookedByRun(order, stage)) {
                usedUp.at(stage, order, who);
            }
            beforeItsTime.note(order, stage, who);
            try {
                progress.insertTick(id, stage, who, device, progress.book(id, stage), now);
            } catch (DataIntegrityViolationException refused) {
                throw new Refused("bench.tick.meanwhile", order.number(), Sentence.of(stage.textKey()));
            }
            afterCommit.tell(new Ticked(id, stage, Ticked.Kind.DONE, now, who));
        }
        // Where it is not this stage's turn, the order says who did it and when, or what comes first.
        orders.completeStage(id, stage, who);
    }

    private boolean bookedByRun(Order order, Stage stage) {
        return stage == Stage.PRINT && runPrints.paperIsBooked(order);
    }

    /** With a laser on the list, a cut is ticked only after its checklist and outcome stand on record. */
    private void requireRecordedCut(Order order) {
        if (machines.standard().isPresent() && recordedCut(order).isEmpty()) {
            throw new Refused("bench.cut.not-recorded", order.number());
        }
    }

    /** The newest cut of the order, if it was cut to the end since it last began anew. */
    Optional<CutJob> recordedCut(Order order) {
        return endedCut(order.id()).filter(job -> job.state() == CutJob.State.DONE);
    }

    /** What was seen of its newest cut, also of one that was broken off. */
    Optional<Trial.Finding> findingOfCut(OrderId order) {
        return endedCut(order).flatMap(job -> cutJobs.findingOf(job.id()));
    }

    private Optional<CutJob> endedCut(OrderId order) {
        Instant since = progress.lastBeginning(order);
        return cutJobs.lastFor(order)
                .filter(job ->
                        job.ended().filter(ended -> !ended.at().isBefore(since)).isPresent());
    }

    /** When the order last began anew with another board; what was cut before is of no use since. */
    private Instant freshBoardSince(Order order) {
        return progress.mishaps(order.id()).stream()
                .filter(mishap -> mishap.againFrom().compareTo(Stage.MASK) < 0)
                .map(Rework::at)
                .reduce((one, later) -> later)
                .orElse(Instant.EPOCH);
    }

    Optional<Tick> undoable(OrderId id) {
        Optional<Order> order = orders.find(id);
        return progress.ticks(id).stream()
                .filter(tick -> !tick.undone())
                .reduce((one, other) -> other)
                .filter(tick -> tick.at().plus(UNDO_WITHIN).isAfter(clock.instant()))
                .filter(tick -> order.map(o -> follows(o, tick.stage())).orElse(false));
    }

    /** The ticks of all orders that can still be taken back, newest first. */
    List<Tick> undoable() {
        List<Tick> last = progress.lastSince(clock.instant().minus(UNDO_WITHIN));
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
    public void undo(BookingKey key, OrderId id, String who) {
        bookings.once(key, "take back the last tick of order " + id, () -> undoNow(id, who));
    }

    private void undoNow(OrderId id, String who) {
        Order order = orders.lock(id);
        Tick tick = undoable(id)
                .orElseThrow(() -> new Refused("bench.undo.too-late", order.number(), UNDO_WITHIN.toMinutes()));
        if (tick.stage() == Stage.CUT) {
            rack.cutsOf(id).stream()
                    .filter(cut -> !cut.undone() && !cut.at().isBefore(tick.at().minusSeconds(60)))
                    .map(Cut::id)
                    .forEach(cut -> cuts.undoWithItsTick(cut, who));
        }
        if (!bookedByRun(order, tick.stage())) {
            usedUp.backFrom(tick.stage(), order, progress.lastBeginning(id), who);
        }
        progress.undo(tick, who, clock.instant());
        progress.stop(id, who, clock.instant());
        orders.sendBack(
                id,
                tick.stage(),
                Sentence.of("bench.history.undone", Sentence.of(tick.stage().textKey())),
                who);
        afterCommit.tell(new Ticked(id, tick.stage(), Ticked.Kind.UNDONE, clock.instant(), who));
    }

    @Transactional
    public Rework wentWrong(BookingKey key, OrderId id, Rework.Report report, String who) {
        String said = "went wrong with order " + id + ": " + report;
        return bookings.once(key, said, () -> wentWrong(id, report, who), Rework::id, progress::mishap);
    }

    /** Within the booking of another room. */
    Rework wentWrong(OrderId id, Rework.Report report, String who) {
        Order order = orders.lock(id);
        Rework mishap = lost.of(order, report, who);
        progress.stop(id, who, clock.instant());
        // What the clock showed belongs to the work that is lost, not to the next attempt.
        progress.book(id, mishap.noticedAt());
        if (report.board() != Rework.Board.KEPT) {
            String why = report.note().isBlank() ? "spoiled" : report.note();
            if (report.board() == Rework.Board.BLANK_SPOILED) {
                cuts.spoilBlanks(id, why, who);
            } else {
                cuts.spoil(id, why, who);
            }
        }
        long number = progress.insert(mishap);
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
        return progress.mishap(number);
    }

    /** Nobody leaves a cut alone, so the clock of the hands runs with the beam, and is started and stopped by it. */
    @EventListener
    @Transactional
    public void cutMoved(CutMoved event) {
        if (event.job().order().isEmpty()) {
            return;
        }
        OrderId id = event.job().order().get();
        Instant now = clock.instant();
        boolean atTheLaser = orders.lock(id).next().equals(Optional.of(Stage.CUT));
        if (event.job().state() != CutJob.State.RUNNING) {
            progress.stop(id, event.by(), now);
        } else if (atTheLaser
                && progress.running().stream()
                        .noneMatch(running -> running.order().equals(id))) {
            progress.start(id, Stage.CUT, event.by(), now);
        }
        afterCommit.tell(new Ticked(id, Stage.CUT, Ticked.Kind.CLOCK, now, event.by()));
    }

    @EventListener
    @Transactional
    public void givenUp(OrderCancelled event) {
        progress.stop(event.order(), event.who(), clock.instant());
    }
}
