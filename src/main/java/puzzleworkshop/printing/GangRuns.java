package puzzleworkshop.printing;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.supplies.Supplies;

/**
 * The print runs. Laying out takes seconds and holds no lock; what it gives is kept only if nobody changed the run
 * meanwhile, and a copy of a picture can be in one run only: the database sees to that.
 */
@Service
public class GangRuns {

    private final RunStore runs;
    private final MediumStore media;
    private final ObjectProvider<PrintQueue> queue;
    private final ObjectProvider<PrintTold> told;
    private final PaperUse paper;
    private final TransactionTemplate transaction;
    private final Clock clock;

    GangRuns(
            RunStore runs, MediumStore media, ObjectProvider<PrintQueue> queue, ObjectProvider<PrintTold> told,
            Supplies supplies, TransactionTemplate transaction, Clock clock) {
        this.runs = runs;
        this.media = media;
        this.queue = queue;
        this.told = told;
        this.paper = new PaperUse(supplies);
        this.transaction = transaction;
        this.clock = clock;
    }

    /** Copies that wait and are in no open run, earliest due first. */
    public List<Copy> waiting() {
        Set<RunStore.Taken> taken = runs.taken();
        return queue().map(PrintQueue::waiting).orElse(List.of()).stream()
                .sorted(Comparator.comparing((PrintItem item) -> item.due().orElse(LocalDate.MAX)).thenComparing(PrintItem::orderNumber))
                .flatMap(item -> open(item, taken).stream())
                .toList();
    }

    /**
     * The copies of an order that are neither planned nor printed. When all are printed and the order waits for its
     * print all the same, it came back and all are to be made again.
     */
    private static List<Copy> open(PrintItem item, Set<RunStore.Taken> taken) {
        List<Integer> copies = IntStream.rangeClosed(1, item.quantity()).boxed().toList();
        boolean cameBack = copies.stream().allMatch(copy -> taken.contains(new RunStore.Taken(item.orderId(), copy, true)));
        return copies.stream()
                .filter(copy -> cameBack || !taken.contains(new RunStore.Taken(item.orderId(), copy, true))
                        && !taken.contains(new RunStore.Taken(item.orderId(), copy, false)))
                .map(copy -> new Copy(item, copy))
                .toList();
    }

    /**
     * Proposes a run: all that is due by a day, and as much of the rest as fits beside it without another sheet.
     *
     * @throws Refused when nothing waits, or nothing of it fits on the medium, or somebody else planned it meanwhile
     */
    public PrintRun propose(long mediumId, LocalDate dueBy, String who) {
        PrintMedium medium = medium(mediumId);
        paper.requireFitForLaser(medium);
        RunPlanner planner = new RunPlanner(medium);
        List<Copy> waiting = waiting();
        List<Copy> fitting = waiting.stream().filter(copy -> planner.takes(copy.item().sticker())).toList();
        if (fitting.isEmpty()) {
            throw new Refused(waiting.isEmpty() ? "printing.nothing-waits" : "printing.nothing-fits", medium.name());
        }
        List<RunItem> must = new ArrayList<>();
        List<RunItem> others = new ArrayList<>();
        for (Copy copy : fitting) {
            boolean first = copy.item().due().map(due -> !due.isAfter(dueBy)).orElse(false);
            (first ? must : others).add(RunPlanner.unplaced(copy));
        }
        if (must.isEmpty()) {
            must.add(others.removeFirst());
        }
        RunPlanner.Plan plan = planner.fill(must, others);
        requireOnRoll(medium, plan);
        try {
            return transaction.execute(status -> {
                reopen(plan.items());
                long id = runs.add(medium, plan, clock.instant(), who);
                write(id, Sentence.of("printing.history.proposed", plan.items().size(), medium.name()), who);
                return get(id);
            });
        } catch (DuplicateKeyException planned) {
            throw new Refused("printing.planned-meanwhile");
        }
    }

    private void reopen(List<RunItem> items) {
        Set<RunStore.Taken> taken = runs.taken();
        items.stream()
                .filter(item -> taken.contains(new RunStore.Taken(item.orderId(), item.copy(), true)))
                .map(RunItem::orderId).distinct().forEach(runs::madeAgain);
    }

    private static void requireOnRoll(PrintMedium medium, RunPlanner.Plan plan) {
        if (medium.kind() == PrintMedium.Kind.ROLL && plan.length().mm() > medium.size().height().mm() + 0.01) {
            throw new Refused("printing.roll-too-short", plan.length(), medium.name(), medium.size().height());
        }
    }

    /**
     * Puts a print at a place and pins it there. When it would lie on others, those are laid out anew around it.
     *
     * @param x left edge of sticker and label from the sheet's left edge; moved inside the room when it lies outside
     * @throws Refused when another pinned print is in the way
     */
    public PrintRun move(long runId, long itemId, int sheet, Length x, Length y, boolean turned, String who) {
        return change(runId, who, run -> {
            RunItem moved = inside(run, item(run, itemId).at(Math.clamp(sheet, 0, run.sheets()), x.mm(), y.mm(), turned)).pinned(true);
            List<RunItem> others = run.planned().stream().filter(other -> other.id() != itemId).toList();
            List<RunItem> all = new ArrayList<>(others);
            all.add(moved);
            RunPlanner planner = new RunPlanner(run.medium());
            if (planner.free(moved, others)) {
                return planner.measured(closedUp(all));
            }
            if (!planner.free(moved, others.stream().filter(RunItem::pinned).toList())) {
                throw new Refused("printing.pinned-in-the-way");
            }
            return planner.layOut(all);
        });
    }

    /** Pins a print where it lies, or sets it free. */
    public PrintRun pin(long runId, long itemId, boolean pinned, String who) {
        return change(runId, who, run -> {
            List<RunItem> all = run.planned().stream().map(item -> item.id() == itemId ? item.pinned(pinned) : item).toList();
            return new RunPlanner.Plan(all, run.sheets(), run.fewestSheets(), run.length(), run.leastLength());
        });
    }

    /** Lays everything that is not pinned out anew. */
    public PrintRun layOutAnew(long runId, String who) {
        return change(runId, who, run -> new RunPlanner(run.medium()).layOut(run.planned()));
    }

    /** Takes a print out of the run; it waits again. The others stay where they are. */
    public PrintRun drop(long runId, long itemId, String who) {
        return transaction.execute(status -> {
            runs.lock(runId);
            PrintRun run = get(runId);
            require(run, RunState.PROPOSED);
            RunItem dropped = item(run, itemId);
            runs.outcome(itemId, RunItem.Outcome.DROPPED, "");
            write(runId, Sentence.of("printing.history.dropped", dropped.orderNumber(), dropped.copy()), who);
            List<RunItem> left = run.planned().stream().filter(item -> item.id() != itemId).toList();
            RunPlanner.Plan plan = new RunPlanner(run.medium()).measured(closedUp(left));
            runs.lay(runId, run.version(), plan);
            return get(runId);
        });
    }

    /** The run is to be printed as it is. */
    @Transactional
    public PrintRun confirm(long runId, String who) {
        PrintRun run = get(runId);
        if (run.planned().isEmpty()) {
            throw new Refused("printing.run-empty");
        }
        paper.requireFitForLaser(run.medium());
        requireStillApproved(run);
        advance(run, RunState.PROPOSED, RunState.CONFIRMED, Optional.empty());
        write(runId, Sentence.of("printing.history.confirmed"), who);
        return get(runId);
    }

    /** Changes are wanted after all. */
    @Transactional
    public PrintRun reopen(long runId, String who) {
        advance(get(runId), RunState.CONFIRMED, RunState.PROPOSED, Optional.empty());
        write(runId, Sentence.of("printing.history.reopened"), who);
        return get(runId);
    }

    /** Takes the run apart; its prints wait again. */
    @Transactional
    public void discard(long runId, String who) {
        runs.lock(runId);
        PrintRun run = get(runId);
        if (!run.state().isOpen()) {
            throw new Refused("printing.not-in-state", runId, Sentence.of(run.state().textKey()));
        }
        run.planned().forEach(item -> runs.outcome(item.id(), RunItem.Outcome.DROPPED, ""));
        advance(run, run.state(), RunState.DISCARDED, Optional.empty());
        write(runId, Sentence.of("printing.history.discarded"), who);
    }

    /**
     * The run came out of the printer: paper and laminate are booked, orders with all their prints go on.
     *
     * @param spoiled prints that are no good; they wait again, alone
     * @param why they are no good, in words; needed when there are any
     * @param although why paper is booked that the shelf does not hold according to the ledger; empty refuses
     */
    @Transactional
    public PrintRun printed(long runId, Set<Long> spoiled, String why, Optional<String> although, String who) {
        runs.lock(runId);
        PrintRun run = get(runId);
        requireReason(spoiled.isEmpty() ? "-" : why);
        requireStillApproved(run);
        advance(run, RunState.CONFIRMED, RunState.PRINTED, Optional.of(clock.instant()));
        paper.book(run, although.filter(reason -> !reason.isBlank()), who);
        for (RunItem item : run.planned()) {
            boolean bad = spoiled.contains(item.id());
            runs.outcome(item.id(), bad ? RunItem.Outcome.SPOILED : RunItem.Outcome.PRINTED, bad ? why.strip() : "");
        }
        write(runId, Sentence.of("printing.history.printed", run.sheets(), spoiled.size()), who);
        run.planned().stream().map(RunItem::orderId).distinct().forEach(order -> goOn(order, who));
        return get(runId);
    }

    private void goOn(long order, String who) {
        queue().ifPresent(waiting -> waiting.find(order)
                .filter(item -> runs.printedCopies(order) >= item.quantity())
                .ifPresent(item -> told.ifAvailable(bench -> bench.printed(order, who))));
    }

    /** A print of a printed run turned out to be no good: it alone waits again. */
    @Transactional
    public PrintRun spoiled(long itemId, String why, String who) {
        long runId = runs.runOf(itemId).orElseThrow(() -> new Refused("printing.unknown"));
        runs.lock(runId);
        PrintRun run = get(runId);
        requireReason(why);
        RunItem item = RunPlanner.byId(run.items(), itemId).orElseThrow();
        if (item.outcome() != RunItem.Outcome.PRINTED) {
            throw new Refused("printing.not-printed", item.orderNumber());
        }
        runs.outcome(itemId, RunItem.Outcome.SPOILED, why.strip());
        write(runId, Sentence.of("printing.history.spoiled", item.orderNumber(), item.copy(), why.strip()), who);
        told.ifAvailable(bench -> bench.spoiled(item.orderId(), item.copy(), why.strip(), who));
        return get(runId);
    }

    /** Sheets the printer spoiled: booked as waste, to nobody's account. */
    @Transactional
    public void spoiledSheets(long runId, int sheets, String why, String who) {
        if (sheets < 1) {
            throw new Refused("printing.sheets-at-least-one");
        }
        requireReason(why);
        paper.spoil(get(runId), sheets, why.strip(), who);
        write(runId, Sentence.of("printing.history.spoiled-sheets", sheets, why.strip()), who);
    }

    public PrintRun get(long runId) {
        PrintMedium medium = runs.mediumOf(runId).flatMap(media::find).orElseThrow(() -> new Refused("printing.unknown"));
        return runs.find(runId, medium).orElseThrow(() -> new Refused("printing.unknown"));
    }

    /** Runs that are proposed or confirmed. */
    public List<PrintRun> open() {
        return runs.open().stream().map(this::get).toList();
    }

    /** Printed runs, newest first. */
    public List<PrintRun> past(int offset, int limit) {
        return runs.past(offset, limit).stream().map(this::get).toList();
    }

    public int countPast() {
        return runs.countPast();
    }

    public List<RunLine> history(long runId) {
        return runs.history(runId);
    }

    /** The pictures of a run as they are approved now, in the order of its prints. */
    public List<PrintItem> pictures(PrintRun run) {
        return run.laid().stream().map(item -> stillApproved(item).orElseThrow(() -> changed(item))).toList();
    }

    /** The approved picture of an order that waits for its print. */
    public Optional<PrintItem> waitingPicture(long orderId) {
        return queue().flatMap(waiting -> waiting.find(orderId));
    }

    /** Where a signed-in browser finds the picture of a sticker that waits or is planned. */
    public static String stickerAddress(long orderId, String look) {
        return "stickers/" + orderId + "/" + Integer.toHexString(look.hashCode()) + ".jpg";
    }

    private PrintRun change(long runId, String who, Function<PrintRun, RunPlanner.Plan> how) {
        PrintRun run = get(runId);
        require(run, RunState.PROPOSED);
        RunPlanner.Plan plan = how.apply(run);
        requireOnRoll(run.medium(), plan);
        return transaction.execute(status -> {
            if (!runs.lay(runId, run.version(), plan)) {
                throw new Refused("printing.changed-meanwhile");
            }
            write(runId, Sentence.of("printing.history.laid-out", plan.sheets()), who);
            return get(runId);
        });
    }

    /** Sheets that became empty are left out. */
    private static List<RunItem> closedUp(List<RunItem> items) {
        List<Integer> used = items.stream().map(RunItem::sheet).distinct().sorted().toList();
        UnaryOperator<RunItem> shift =
                item -> item.at(used.indexOf(item.sheet()), item.x().mm(), item.y().mm(), item.turned());
        return items.stream().map(shift).toList();
    }

    private static RunItem inside(PrintRun run, RunItem item) {
        double inset = run.medium().inset().mm();
        double mostX = run.medium().size().width().mm() - inset - item.footprint().width().mm();
        double mostY = run.medium().size().height().mm() - inset - item.footprint().height().mm();
        if (mostX < inset - 0.002 || mostY < inset - 0.002) {
            throw new Refused("printing.not-this-way", item.orderNumber());
        }
        return item.at(item.sheet(), Math.clamp(item.x().mm(), inset, Math.max(inset, mostX)),
                Math.clamp(item.y().mm(), inset, Math.max(inset, mostY)), item.turned());
    }

    private void requireStillApproved(PrintRun run) {
        run.planned().stream().filter(item -> stillApproved(item).isEmpty()).findFirst().ifPresent(item -> {
            throw changed(item);
        });
    }

    private Optional<PrintItem> stillApproved(RunItem item) {
        return queue().flatMap(waiting -> waiting.find(item.orderId())).filter(now -> now.look().equals(item.look())
                && now.finished().equals(item.finished()));
    }

    private static Refused changed(RunItem item) {
        return new Refused("printing.changed-since", item.orderNumber());
    }

    private void advance(PrintRun run, RunState from, RunState to, Optional<Instant> printedAt) {
        if (!runs.move(run.id(), from, to, printedAt)) {
            throw new Refused("printing.not-in-state", run.id(), Sentence.of(run.state().textKey()));
        }
    }

    private static void require(PrintRun run, RunState state) {
        if (run.state() != state) {
            throw new Refused("printing.not-in-state", run.id(), Sentence.of(run.state().textKey()));
        }
    }

    private static void requireReason(String why) {
        if (why.isBlank()) {
            throw new Refused("printing.reason-missing");
        }
    }

    private static RunItem item(PrintRun run, long itemId) {
        return RunPlanner.byId(run.planned(), itemId).orElseThrow(() -> new Refused("printing.unknown"));
    }

    private PrintMedium medium(long id) {
        return media.find(id).orElseThrow(() -> new Refused("printing.unknown"));
    }

    private Optional<PrintQueue> queue() {
        return Optional.ofNullable(queue.getIfAvailable());
    }

    private void write(long run, Sentence what, String who) {
        runs.write(run, what, clock.instant(), who);
    }
}
