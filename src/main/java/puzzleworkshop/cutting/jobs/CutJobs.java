package puzzleworkshop.cutting.jobs;

import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.machines.Motion;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/**
 * Cuts from their checklist to the beam; {@link CutEnds} has what came of them. Nothing starts before every item is answered, and
 * nothing starts that must not be cut.
 */
@Service
public class CutJobs {

    private final CutJobStore store;
    private final CutBook book;
    private final Settings settings;
    private final Machines machines;
    private final Clock clock;

    CutJobs(CutJobStore store, CutBook book, Settings settings, Machines machines, Clock clock) {
        this.store = store;
        this.book = book;
        this.settings = settings;
        this.machines = machines;
        this.clock = clock;
    }

    /**
     * Lays a cut out: the order's open one if there is one, else a new one with the setting's parameters. A job that has
     * not started takes over what is now known of the workpiece.
     */
    @Transactional
    public CutJob prepare(CutJob.Wish wish, String by) {
        Machine machine = machines.find(wish.machineId()).orElseThrow(() -> new Refused("cutting.machine.gone"));
        CutSetting setting = settings.add(machine, wish.workpiece().board());
        Optional<Long> open = wish.order().flatMap(store::openFor);
        if (open.isPresent()) {
            CutJobStore.Row row = store.lock(open.get()).orElseThrow();
            if (row.started().isEmpty() && row.ended().isEmpty()) {
                store.place(row.id(), wish.workpiece(), setting.id());
                if (row.settingId() != setting.id()) {
                    store.dial(
                            row.id(),
                            setting.parameters(),
                            wish.estimate().map(CutTime::running),
                            checkAgain(row.parameters(), setting.parameters()));
                }
            }
            return find(row.id()).orElseThrow();
        }
        try {
            return find(store.insert(wish, setting.id(), setting.parameters(), by, clock.instant()))
                    .orElseThrow();
        } catch (DuplicateKeyException meanwhile) {
            throw new Refused("cutting.job.meanwhile", wish.label());
        }
    }

    @Transactional(readOnly = true)
    public Optional<CutJob> find(long id) {
        return book.find(id);
    }

    /** The cut of an order that has not ended. */
    @Transactional(readOnly = true)
    public Optional<CutJob> openFor(OrderId order) {
        return store.openFor(order).flatMap(this::find);
    }

    /** All cuts of an order, oldest first. */
    @Transactional(readOnly = true)
    public List<CutJob> of(OrderId order) {
        return book.all(store.of(order));
    }

    /** The newest cut of an order, whatever came of it. */
    @Transactional(readOnly = true)
    public Optional<CutJob> lastFor(OrderId order) {
        return store.lastFor(order).flatMap(this::find);
    }

    /** What was seen of a cut; empty before its end, and where nothing was to be seen. */
    @Transactional(readOnly = true)
    public Optional<Finding> findingOf(long jobId) {
        return store.findingOf(jobId);
    }

    /** What a machine cut lately, newest first. */
    @Transactional(readOnly = true)
    public List<CutJob> latest(long machineId, int most) {
        return book.all(store.latest(machineId, most));
    }

    /** Looked at, and it is so. */
    @Transactional
    public CutJob check(long jobId, CheckItem item, String by) {
        return check(jobId, List.of(item), by);
    }

    /** Several items looked at by one person at one moment. */
    @Transactional
    public CutJob check(long jobId, Collection<CheckItem> items, String by) {
        Instant now = clock.instant();
        return answer(
                jobId,
                items.stream()
                        .map(item -> new CheckAnswer(item, true, "", by, now))
                        .toList());
    }

    /**
     * Skipped; the reason stays with the job for good.
     *
     * @throws Refused without a reason of at least {@value CheckAnswer#SHORTEST_REASON} letters, and for the frame, which is
     *     always traced
     */
    @Transactional
    public CutJob skip(long jobId, CheckItem item, String reason, String by) {
        String said = reason == null ? "" : reason.strip();
        if (said.length() < CheckAnswer.SHORTEST_REASON) {
            throw new Refused("cutting.job.skip.reason", CheckAnswer.SHORTEST_REASON);
        }
        if (!item.maySkip()) {
            throw new Refused("cutting.job.frame.required");
        }
        return answer(jobId, List.of(new CheckAnswer(item, false, said, by, clock.instant())));
    }

    /**
     * Dials other parameters in for this job only. Where gap or air are others than before, they must be checked again.
     *
     * @param estimate with these parameters, where the lines are known
     */
    @Transactional
    public CutJob dial(long jobId, CutParameters parameters, Optional<CutTime> estimate) {
        CutJob job = notStarted(jobId);
        Motion motion = job.setting().machine().motion();
        if (parameters.speed().compareTo(motion.maxCut()) > 0) {
            throw new Refused(
                    "cutting.setting.too.fast",
                    parameters.speed(),
                    job.setting().machine().name(),
                    motion.maxCut());
        }
        store.dial(jobId, parameters, estimate.map(CutTime::running), checkAgain(job.parameters(), parameters));
        return find(jobId).orElseThrow();
    }

    /**
     * The place of the board was measured, or the board was moved: before the start its frame must be traced again.
     *
     * @throws Refused when the cut has ended
     */
    @Transactional
    public CutJob placed(long jobId) {
        CutJob job = book.notEnded(jobId);
        if (job.started().isEmpty()) {
            store.placed(jobId, clock.instant());
        }
        return find(jobId).orElseThrow();
    }

    private Optional<Instant> checkAgain(CutParameters before, CutParameters now) {
        boolean same = before.gap().equals(now.gap()) && before.airAssist() == now.airAssist();
        return same ? Optional.empty() : Optional.of(clock.instant());
    }

    /**
     * The beam goes on.
     *
     * @throws Refused with the reason: something that must not be cut, a check not answered, the machine busy
     */
    @Transactional
    public CutJob start(long jobId, String by) {
        CutJob job = notStarted(jobId);
        Machine machine = job.setting().machine();
        for (Sentence obstacle : job.obstacles()) {
            throw new Refused(obstacle);
        }
        Optional<CutJob> other = store.runningOn(machine.id()).flatMap(this::find);
        if (other.isPresent()) {
            throw new Refused("cutting.job.busy", machine.name(), other.get().label());
        }
        try {
            store.start(jobId, by, clock.instant());
        } catch (DuplicateKeyException meanwhile) {
            throw new Refused("cutting.job.busy", machine.name(), job.label());
        }
        return book.told(jobId, by);
    }

    private CutJob answer(long jobId, List<CheckAnswer> answers) {
        CutJob job = notStarted(jobId);
        answers.forEach(answer -> store.answer(jobId, answer));
        return job.answered(answers);
    }

    private CutJob notStarted(long jobId) {
        CutJob job = book.notEnded(jobId);
        if (job.started().isPresent()) {
            throw new Refused("cutting.job.started", job.label());
        }
        return job;
    }
}
