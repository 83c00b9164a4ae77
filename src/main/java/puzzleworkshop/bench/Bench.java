package puzzleworkshop.bench;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.schedule.Job.Wait;
import puzzleworkshop.planning.schedule.Schedule;
import puzzleworkshop.printing.PlannedPrints.OpenRun;
import puzzleworkshop.progress.Progress;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.progress.Running;
import puzzleworkshop.progress.Tick;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.Stage;

/**
 * The bench: what is next at each stage, and everything that is told there. The order's row is locked for each change,
 * and the database refuses a stage that is done twice or skipped, whatever a screen believes.
 */
@Service
public class Bench {

    private final Progress progress;
    private final PhotoStore photoStore;
    private final StageTransitions work;
    private final LostWork lost;
    private final Orders orders;
    private final WeekPlan plan;
    private final SheetRack rack;
    private final RunPrints runPrints;
    private final EarlyWorkNotes beforeItsTime;
    private final AfterCommit afterCommit;
    private final Photos photos;
    private final Clock clock;

    Bench(
            Progress progress,
            PhotoStore photoStore,
            StageTransitions work,
            LostWork lost,
            Orders orders,
            WeekPlan plan,
            SheetRack rack,
            RunPrints runPrints,
            EarlyWorkNotes beforeItsTime,
            AfterCommit afterCommit,
            Photos photos,
            Clock clock) {
        this.progress = progress;
        this.photoStore = photoStore;
        this.work = work;
        this.lost = lost;
        this.orders = orders;
        this.plan = plan;
        this.rack = rack;
        this.runPrints = runPrints;
        this.beforeItsTime = beforeItsTime;
        this.afterCommit = afterCommit;
        this.photos = photos;
        this.clock = clock;
    }

    /**
     * One order waiting at a stage.
     *
     * @param entry with its verdict
     * @param planned when the plan does this stage
     * @param running its clock, if one runs
     * @param boards held for it
     * @param restsUntil what was done before must lie until then
     * @param openRun the print run that its print still has to come out of
     */
    public record Waiting(
            WeekPlan.Entry entry,
            Optional<Schedule.Work> planned,
            Optional<Running> running,
            List<Sheet> boards,
            Optional<Instant> restsUntil,
            Optional<OpenRun> openRun) {

        public Order order() {
            return entry.order();
        }

        /** Why its next stage may not be done yet, whatever somebody ticks; empty when it may. */
        public Optional<Sentence> mayNot() {
            if (!order().next().equals(Optional.of(Stage.PRINT))) {
                return Optional.empty();
            }
            if (order().approval().isPresent()) {
                return openRun.map(RunPrints::why);
            }
            return Optional.of(
                    Sentence.of(order().picture().isEmpty() ? "bench.may-not.picture" : "bench.may-not.approval"));
        }

        /** The same in a few words, for a list in which it is not the only one. */
        public Optional<Sentence> mayNotInShort() {
            if (mayNot().isEmpty()) {
                return Optional.empty();
            }
            if (order().approval().isPresent()) {
                return openRun.map(run -> Sentence.of("bench.card.may-not.run", run.run()));
            }
            return Optional.of(Sentence.of(
                    order().picture().isEmpty() ? "bench.card.may-not.picture" : "bench.card.may-not.approval"));
        }

        /** The day since which its work waits for money. */
        public Optional<LocalDate> unpaidSince() {
            return entry.outlook()
                    .waitsFor()
                    .filter(wait -> wait.forWhat() == Wait.For.PAYMENT)
                    .map(Wait::since);
        }
    }

    /** What came of ticking several at a time: some may be refused while others are done. */
    public record Outcome(List<OrderId> done, Map<OrderId, Sentence> refused) {}

    /** A photo without its content. */
    public record PhotoNote(long id, Stage stage, Instant at, String who) {}

    /** A photo's content. */
    public record Photo(String mediaType, byte[] content) {}

    /** Orders at a stage, in the order in which the plan does them. */
    public List<Waiting> queue(Stage stage) {
        WeekPlan.Standing standing = plan.now();
        List<WeekPlan.Entry> here = standing.entries().stream()
                .filter(entry -> entry.order().next().equals(Optional.of(stage)))
                .toList();
        Map<OrderId, Running> running =
                progress.running().stream().collect(Collectors.toMap(Running::order, Function.identity()));
        Map<OrderId, Instant> rests = beforeItsTime.restsUntil(
                stage, here.stream().map(e -> e.order().id()).toList());
        Map<OrderId, List<Sheet>> boards =
                rack.heldFor(here.stream().map(e -> e.order().id()).toList());
        Map<OrderId, OpenRun> openRuns =
                runPrints.stillIn(stage, here.stream().map(e -> e.order().id()).toList());
        return here.stream()
                .map(entry -> new Waiting(
                        entry,
                        standing.plan().workOf(entry.order().id().value()).stream()
                                .filter(w -> w.stage() == stage)
                                .findFirst(),
                        Optional.ofNullable(running.get(entry.order().id())),
                        boards.getOrDefault(entry.order().id(), List.of()),
                        Optional.ofNullable(rests.get(entry.order().id())),
                        Optional.ofNullable(openRuns.get(entry.order().id()))))
                // what only waits for its customer asks nobody at the bench for anything
                .sorted(Comparator.comparing((Waiting w) -> w.running().isEmpty())
                        .thenComparing(w -> w.entry().toBeCollected())
                        .thenComparing(
                                w -> w.planned().map(Schedule.Work::start).orElse(Schedule.NEVER))
                        .thenComparing(w -> w.order().id().value()))
                .toList();
    }

    /** The first stage at which something may be done now. */
    public Optional<Stage> firstWorkable() {
        return plan.now().entries().stream()
                .map(WeekPlan.Entry::order)
                .filter(order -> !order.waitsForApproval() || !order.next().equals(Optional.of(Stage.PRINT)))
                .flatMap(order -> order.next().stream())
                .min(Comparator.naturalOrder());
    }

    /** How many orders wait at each stage. */
    public Map<Stage, Long> counts() {
        return plan.now().entries().stream()
                .flatMap(entry -> entry.order().next().stream())
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
    }

    /**
     * Ticks a stage for one or more orders. Each stands for itself: one that is refused (somebody was faster, no board)
     * does not hold up the others.
     *
     * @param device as the browser names itself
     */
    @Books
    public Outcome tick(BookingKey key, Collection<OrderId> together, Stage stage, String who, String device) {
        List<OrderId> done = new ArrayList<>();
        Map<OrderId, Sentence> refused = new HashMap<>();
        for (OrderId id : together.stream()
                .distinct()
                .sorted(Comparator.comparingLong(OrderId::value))
                .toList()) {
            try {
                work.tick(key.part(id.value()), id, stage, who, device);
                done.add(id);
            } catch (Refused why) {
                refused.put(id, why.sentence());
            }
        }
        return new Outcome(List.copyOf(done), Map.copyOf(refused));
    }

    /**
     * Takes back the last tick of an order, if it was a mistake and is not long ago.
     *
     * @throws Refused when the order has gone on, or it is too long ago: then tell what went wrong instead
     */
    @Books
    public void undo(BookingKey key, OrderId id, String who) {
        work.undo(key, id, who);
    }

    /** The newest tick of an order that can still be taken back. */
    public Optional<Tick> undoable(OrderId id) {
        return work.undoable(id);
    }

    /** Ticks of the last minutes that can still be taken back, newest first. */
    public List<Tick> undoable() {
        return work.undoable();
    }

    /** Something went wrong: books the loss and sends the order back to where it is made again. */
    @Books
    public Rework wentWrong(BookingKey key, OrderId id, Rework.Report report, String who) {
        return work.wentWrong(key, id, report, who);
    }

    /** What would be booked as lost; the maker may correct the material. */
    public Rework reckoned(OrderId id, Rework.Report report) {
        return lost.of(orders.get(id), report, "");
    }

    /** Starts the clock of an order at its next stage. It runs in the database, whatever happens to the browser. */
    @Transactional
    public Running start(OrderId id, Stage stage, String who) {
        Order order = orders.lock(id);
        if (!order.next().equals(Optional.of(stage))) {
            throw new Refused("bench.clock.not-here", order.number(), Sentence.of(stage.textKey()));
        }
        Optional<Running> other = running(id);
        if (other.isPresent()) {
            throw new Refused(
                    "bench.clock.runs",
                    order.number(),
                    other.get().who(),
                    other.get().since());
        }
        try {
            progress.start(id, stage, who, clock.instant());
        } catch (DuplicateKeyException meanwhile) {
            throw new Refused("bench.clock.runs", order.number(), who, clock.instant());
        }
        afterCommit.tell(new Ticked(id, stage, Ticked.Kind.CLOCK, clock.instant(), who));
        return running(id).orElseThrow();
    }

    /** Stops the clock; what it showed counts when the stage is ticked. */
    @Transactional
    public void stop(OrderId id, String who) {
        Order order = orders.lock(id);
        if (!progress.stop(id, who, clock.instant())) {
            throw new Refused("bench.clock.stopped", order.number());
        }
        afterCommit.tell(new Ticked(id, order.next().orElse(Stage.HAND_OVER), Ticked.Kind.CLOCK, clock.instant(), who));
    }

    /** The order's cut, once it stands on record: only then is the stage ticked. */
    @Transactional(readOnly = true)
    public Optional<CutJob> recordedCut(OrderId id) {
        return work.recordedCut(orders.get(id));
    }

    /** What was seen of the order's newest cut since it last began anew, broken off or not; empty where nothing was. */
    @Transactional(readOnly = true)
    public Optional<Trial.Finding> findingOfCut(OrderId id) {
        return work.findingOfCut(id);
    }

    /** The moment it is by the workshop's clock, for clocks that run on a screen. */
    public Instant now() {
        return clock.instant();
    }

    public Optional<Running> running(OrderId id) {
        return progress.running().stream().filter(r -> r.order().equals(id)).findFirst();
    }

    public List<Running> running() {
        return progress.running();
    }

    /** All ticks of an order in the order in which they were made, those taken back included. */
    public List<Tick> ticks(OrderId id) {
        return progress.ticks(id);
    }

    public List<Rework> mishaps(OrderId id) {
        return progress.mishaps(id);
    }

    /** What went wrong since a moment, for all orders. */
    public List<Rework> mishapsSince(Instant from) {
        return progress.mishapsSince(from);
    }

    /**
     * Keeps a photo.
     *
     * @param mishap which it shows, if any
     * @param file as the phone or browser sends it
     * @throws Refused when it is no photo, or too large
     */
    @Transactional
    public long photo(OrderId id, Stage stage, Optional<Long> mishap, byte[] file, String who) {
        Order order = orders.get(id);
        return photoStore.add(order.id(), stage, mishap, Photos.MEDIA_TYPE, photos.kept(file), who, clock.instant());
    }

    public List<PhotoNote> photos(OrderId id) {
        return photoStore.of(id);
    }

    public Optional<Photo> photo(long id) {
        return photoStore.find(id);
    }
}
