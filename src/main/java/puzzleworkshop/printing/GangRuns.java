package puzzleworkshop.printing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.printing.crosses.PrintedCrosses;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.supplies.Supplies;

/**
 * The print runs: what waits, and how it is laid out. Laying out takes seconds and holds no lock; what it gives is kept only if nobody changed the run
 * meanwhile, and a copy of a picture can be in one run only: the database sees to that.
 */
@Service
public class GangRuns {

    private final RunStore runs;
    private final RunRecords records;
    private final PrintMedia media;
    private final PaperUse paper;
    private final PrintedCrosses crosses;
    private final TransactionTemplate transaction;

    GangRuns(
            RunStore runs,
            RunRecords records,
            PrintMedia media,
            Supplies supplies,
            PrintedCrosses crosses,
            TransactionTemplate transaction) {
        this.crosses = crosses;
        this.runs = runs;
        this.records = records;
        this.media = media;
        this.paper = new PaperUse(supplies);
        this.transaction = transaction;
    }

    /** Copies that wait and are in no open run, earliest due first. */
    public List<Copy> waiting() {
        Set<RunStore.Taken> taken = runs.taken();
        return records.queue().waiting().stream()
                .sorted(Comparator.comparing((PrintItem item) -> item.due().orElse(LocalDate.MAX))
                        .thenComparing(item -> item.order().number()))
                .flatMap(item -> open(item, taken).stream())
                .toList();
    }

    /** Orders that had better not be printed yet, and why, as words that follow the number. */
    public Map<OrderId, Sentence> heldBack() {
        return records.queue().heldBack();
    }

    /**
     * The copies of an order that are neither planned nor printed. When all are printed and the order waits for its
     * print all the same, it came back and all are to be made again.
     */
    private static List<Copy> open(PrintItem item, Set<RunStore.Taken> taken) {
        List<Integer> copies = IntStream.rangeClosed(1, item.quantity()).boxed().toList();
        boolean cameBack = copies.stream()
                .allMatch(copy -> taken.contains(new RunStore.Taken(item.order().id(), copy, true)));
        return copies.stream()
                .filter(copy -> cameBack
                        || !taken.contains(new RunStore.Taken(item.order().id(), copy, true))
                                && !taken.contains(
                                        new RunStore.Taken(item.order().id(), copy, false)))
                .map(copy -> new Copy(item, copy))
                .toList();
    }

    /**
     * Proposes a run: all that is due by a day, and as much of the rest as fits beside it without another sheet. Orders
     * that are held back are left out.
     *
     * @throws Refused when nothing waits, or nothing of it fits on the medium, or somebody else planned it meanwhile
     */
    public PrintRun propose(long mediumId, LocalDate dueBy, String who) {
        PrintMedium medium = medium(mediumId);
        paper.requireFitForLaser(medium);
        RunPlanner planner = new RunPlanner(medium);
        Set<OrderId> heldBack = heldBack().keySet();
        List<Copy> all = waiting();
        List<Copy> waiting = all.stream()
                .filter(copy -> !heldBack.contains(copy.item().order().id()))
                .toList();
        if (waiting.isEmpty() && !all.isEmpty()) {
            throw new Refused("printing.all-held-back");
        }
        List<Copy> fitting = waiting.stream()
                .filter(copy -> medium.takes(copy.item().sticker()))
                .toList();
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
                long id = runs.add(medium, crosses.setting().wanted(), plan, records.now(), who);
                records.write(
                        id,
                        Sentence.of("printing.history.proposed", plan.items().size(), medium.name()),
                        who);
                return records.get(id);
            });
        } catch (DuplicateKeyException planned) {
            throw new Refused("printing.planned-meanwhile");
        }
    }

    private void reopen(List<RunItem> items) {
        Set<RunStore.Taken> taken = runs.taken();
        items.stream()
                .filter(item -> taken.contains(new RunStore.Taken(item.order().id(), item.copy(), true)))
                .map(item -> item.order().id())
                .distinct()
                .forEach(runs::madeAgain);
    }

    private static void requireOnRoll(PrintMedium medium, RunPlanner.Plan plan) {
        if (medium.kind() == PrintMedium.Kind.ROLL
                && plan.length().mm() > medium.size().height().mm() + 0.01) {
            throw new Refused(
                    "printing.roll-too-short",
                    plan.length(),
                    medium.name(),
                    medium.size().height());
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
            RunItem moved = inside(
                            run, item(run, itemId).at(Math.clamp(sheet, 0, run.sheets()), x.mm(), y.mm(), turned))
                    .pinned(true);
            List<RunItem> others =
                    run.planned().stream().filter(other -> other.id() != itemId).toList();
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
            List<RunItem> all = run.planned().stream()
                    .map(item -> item.id() == itemId ? item.pinned(pinned) : item)
                    .toList();
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
            PrintRun run = records.locked(runId);
            RunRecords.require(run, RunState.PROPOSED);
            RunItem dropped = item(run, itemId);
            runs.outcome(itemId, RunItem.Outcome.DROPPED, "");
            records.write(
                    runId,
                    Sentence.of("printing.history.dropped", dropped.order().number(), dropped.copy()),
                    who);
            List<RunItem> left =
                    run.planned().stream().filter(item -> item.id() != itemId).toList();
            RunPlanner.Plan plan = new RunPlanner(run.medium()).measured(closedUp(left));
            runs.lay(runId, run.version(), plan);
            return records.get(runId);
        });
    }

    public PrintRun get(long runId) {
        return records.get(runId);
    }

    /** Runs that are proposed or confirmed. */
    public List<PrintRun> open() {
        return runs.open().stream().map(records::get).toList();
    }

    /** Printed runs, newest first. */
    public List<PrintRun> past(int offset, int limit) {
        return runs.past(offset, limit).stream().map(records::get).toList();
    }

    public int countPast() {
        return runs.countPast();
    }

    public List<RunLine> history(long runId) {
        return runs.history(runId);
    }

    /** The pictures of a run as they are approved now, in the order of its prints. */
    public List<PrintItem> pictures(PrintRun run) {
        return run.laid().stream()
                .map(item -> records.stillApproved(item).orElseThrow(() -> RunRecords.changed(item)))
                .toList();
    }

    /** The picture of an order as it is printed: of one that waits, and of one that a run shows although it was given up. */
    public Optional<PrintItem> pictureOf(OrderId order) {
        return records.queue().picture(order);
    }

    /** Where a signed-in browser finds the picture of a sticker that waits or is planned. */
    public static String stickerAddress(OrderId order, String look) {
        return "stickers/" + order.value() + "/" + Integer.toHexString(look.hashCode()) + ".jpg";
    }

    private PrintRun change(long runId, String who, Function<PrintRun, RunPlanner.Plan> how) {
        PrintRun run = records.get(runId);
        RunRecords.require(run, RunState.PROPOSED);
        RunPlanner.Plan plan = how.apply(run);
        requireOnRoll(run.medium(), plan);
        return transaction.execute(status -> {
            if (!runs.lay(runId, run.version(), plan)) {
                throw new Refused("printing.changed-meanwhile");
            }
            records.write(runId, Sentence.of("printing.history.laid-out", plan.sheets()), who);
            return records.get(runId);
        });
    }

    /** Sheets that became empty are left out. */
    private static List<RunItem> closedUp(List<RunItem> items) {
        List<Integer> used =
                items.stream().map(RunItem::sheet).distinct().sorted().toList();
        UnaryOperator<RunItem> shift = item ->
                item.at(used.indexOf(item.sheet()), item.x().mm(), item.y().mm(), item.turned());
        return items.stream().map(shift).toList();
    }

    private static RunItem inside(PrintRun run, RunItem item) {
        double inset = run.medium().inset().mm();
        double mostX = run.medium().size().width().mm()
                - inset
                - item.footprint().width().mm();
        double mostY = run.medium().size().height().mm()
                - inset
                - item.footprint().height().mm();
        if (mostX < inset - 0.002 || mostY < inset - 0.002) {
            throw new Refused("printing.not-this-way", item.order().number());
        }
        return item.at(
                item.sheet(),
                Math.clamp(item.x().mm(), inset, Math.max(inset, mostX)),
                Math.clamp(item.y().mm(), inset, Math.max(inset, mostY)),
                item.turned());
    }

    private static RunItem item(PrintRun run, long itemId) {
        return RunPlanner.byId(run.planned(), itemId).orElseThrow(() -> new Refused("printing.unknown"));
    }

    private PrintMedium medium(long id) {
        return media.find(id).orElseThrow(() -> new Refused("printing.unknown"));
    }
}
