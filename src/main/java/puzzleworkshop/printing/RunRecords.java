package puzzleworkshop.printing;

import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.runtime.AfterCommit;

/** What laying out and printing share: a run as it is kept, its next state, its history, and what waits for the printer. */
@Component
class RunRecords {

    private final RunStore runs;
    private final PrintMedia media;
    private final PrintQueue queue;
    private final Clock clock;
    private final AfterCommit afterCommit;

    RunRecords(RunStore runs, PrintMedia media, PrintQueue queue, Clock clock, AfterCommit afterCommit) {
        this.runs = runs;
        this.media = media;
        this.queue = queue;
        this.clock = clock;
        this.afterCommit = afterCommit;
    }

    PrintRun get(long runId) {
        PrintMedium medium =
                runs.mediumOf(runId).flatMap(media::find).orElseThrow(() -> new Refused("printing.unknown"));
        return runs.find(runId, medium).orElseThrow(() -> new Refused("printing.unknown"));
    }

    /** Held until the transaction ends. */
    PrintRun locked(long runId) {
        runs.lock(runId);
        return get(runId);
    }

    PrintQueue queue() {
        return queue;
    }

    Instant now() {
        return clock.instant();
    }

    /** Every change of a run is written down here, and told when it is committed. */
    void write(long run, Sentence what, String who) {
        runs.write(run, what, clock.instant(), who);
        afterCommit.tell(new PlannedPrints.PrintsMoved());
    }

    void advance(PrintRun run, RunState from, RunState to, Optional<Instant> printedAt) {
        if (!runs.move(run.id(), from, to, printedAt)) {
            throw notInState(run);
        }
    }

    static void require(PrintRun run, RunState state) {
        if (run.state() != state) {
            throw notInState(run);
        }
    }

    static Refused notInState(PrintRun run) {
        return new Refused(
                "printing.not-in-state", run.id(), Sentence.of(run.state().textKey()));
    }

    /** The picture of a print, if it is approved as it was when the run was proposed. */
    Optional<PrintItem> stillApproved(RunItem item) {
        return queue.find(item.order().id())
                .filter(now -> now.look().equals(item.look()) && now.finished().equals(item.finished()));
    }

    static Refused changed(RunItem item) {
        return new Refused("printing.changed-since", item.order().number());
    }
}
