package puzzleworkshop.printing;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.supplies.Supplies;

/**
 * From a laid out run to paper: confirmed, printed, spoiled or taken apart. What is used up is booked and orders go on in
 * the same transaction.
 */
@Service
public class PrintRoom {

    private final RunStore runs;
    private final Bookings bookings;
    private final RunRecords records;
    private final ApplicationEventPublisher events;
    private final PaperUse paper;

    PrintRoom(
            RunStore runs, Bookings bookings, RunRecords records, ApplicationEventPublisher events, Supplies supplies) {
        this.runs = runs;
        this.bookings = bookings;
        this.records = records;
        this.events = events;
        this.paper = new PaperUse(supplies);
    }

    /** The run is to be printed as it is. */
    @Transactional
    public PrintRun confirm(long runId, String who) {
        PrintRun run = records.get(runId);
        if (run.planned().isEmpty()) {
            throw new Refused("printing.run-empty");
        }
        paper.requireFitForLaser(run.medium());
        requireStillApproved(run);
        records.advance(run, RunState.PROPOSED, RunState.CONFIRMED, Optional.empty());
        records.write(runId, Sentence.of("printing.history.confirmed"), who);
        return records.get(runId);
    }

    /** Changes are wanted after all. */
    @Transactional
    public PrintRun reopen(long runId, String who) {
        records.advance(records.get(runId), RunState.CONFIRMED, RunState.PROPOSED, Optional.empty());
        records.write(runId, Sentence.of("printing.history.reopened"), who);
        return records.get(runId);
    }

    /** Takes the run apart; its prints wait again. */
    @Transactional
    public void discard(long runId, String who) {
        PrintRun run = records.locked(runId);
        if (!run.state().isOpen()) {
            throw RunRecords.notInState(run);
        }
        run.planned().forEach(item -> runs.outcome(item.id(), RunItem.Outcome.DROPPED, ""));
        records.advance(run, run.state(), RunState.DISCARDED, Optional.empty());
        records.write(runId, Sentence.of("printing.history.discarded"), who);
    }

    /**
     * The run came out of the printer: paper and laminate are booked, orders with all their prints go on.
     *
     * @param spoiled prints that are no good; they wait again, alone
     * @param why they are no good, in words; needed when there are any
     * @param although why paper is booked that the shelf does not hold according to the ledger; empty refuses
     */
    @Books
    @Transactional
    public PrintRun printed(
            BookingKey key, long runId, Set<Long> spoiled, String why, Optional<String> although, String who) {
        String said = "run " + runId + " is printed, spoiled " + new TreeSet<>(spoiled) + ": " + why;
        return bookings.once(
                key, said, () -> printedNow(runId, spoiled, why, although, who), PrintRun::id, records::get);
    }

    private PrintRun printedNow(long runId, Set<Long> spoiled, String why, Optional<String> although, String who) {
        PrintRun run = records.locked(runId);
        requireReason(spoiled.isEmpty() ? "-" : why);
        requireStillApproved(run);
        records.advance(run, RunState.CONFIRMED, RunState.PRINTED, Optional.of(records.now()));
        paper.book(run, although.filter(reason -> !reason.isBlank()), who);
        for (RunItem item : run.planned()) {
            boolean bad = spoiled.contains(item.id());
            runs.outcome(item.id(), bad ? RunItem.Outcome.SPOILED : RunItem.Outcome.PRINTED, bad ? why.strip() : "");
        }
        records.write(runId, Sentence.of("printing.history.printed", run.sheets(), spoiled.size()), who);
        List<OrderId> complete = run.planned().stream()
                .map(item -> item.order().id())
                .distinct()
                .filter(this::hasAllPrints)
                .toList();
        events.publishEvent(new RunPrinted(runId, complete, who));
        return records.get(runId);
    }

    private boolean hasAllPrints(OrderId order) {
        return records.queue()
                .find(order)
                .filter(item -> runs.printedCopies(order) >= item.quantity())
                .isPresent();
    }

    /** A print of a printed run turned out to be no good: it alone waits again. */
    @Transactional
    public PrintRun spoiled(long itemId, String why, String who) {
        long runId = runs.runOf(itemId).orElseThrow(() -> new Refused("printing.unknown"));
        PrintRun run = records.locked(runId);
        requireReason(why);
        RunItem item = RunPlanner.byId(run.items(), itemId).orElseThrow();
        if (item.outcome() != RunItem.Outcome.PRINTED) {
            throw new Refused("printing.not-printed", item.order().number());
        }
        runs.outcome(itemId, RunItem.Outcome.SPOILED, why.strip());
        records.write(
                runId, Sentence.of("printing.history.spoiled", item.order().number(), item.copy(), why.strip()), who);
        events.publishEvent(new PrintSpoiled(item.order().id(), item.copy(), why.strip(), who));
        return records.get(runId);
    }

    /** Sheets the printer spoiled: booked as waste, to nobody's account. */
    @Books
    @Transactional
    public void spoiledSheets(BookingKey key, long runId, int sheets, String why, String who) {
        String said = sheets + " spoiled sheets of run " + runId + ": " + why;
        bookings.once(key, said, () -> spoiledSheetsNow(key.part("paper"), runId, sheets, why, who));
    }

    private void spoiledSheetsNow(BookingKey key, long runId, int sheets, String why, String who) {
        if (sheets < 1) {
            throw new Refused("printing.sheets-at-least-one");
        }
        requireReason(why);
        paper.spoil(key, records.get(runId), sheets, why.strip(), who);
        records.write(runId, Sentence.of("printing.history.spoiled-sheets", sheets, why.strip()), who);
    }

    private void requireStillApproved(PrintRun run) {
        run.planned().stream()
                .filter(item -> records.stillApproved(item).isEmpty())
                .findFirst()
                .ifPresent(item -> {
                    throw RunRecords.changed(item);
                });
    }

    private static void requireReason(String why) {
        if (why.isBlank()) {
            throw new Refused("printing.reason-missing");
        }
    }
}
