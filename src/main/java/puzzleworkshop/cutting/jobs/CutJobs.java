package puzzleworkshop.cutting.jobs;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Source;
import puzzleworkshop.cutting.settings.TrialPhoto;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.machines.Motion;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/**
 * Cuts from their checklist to their outcome. Nothing starts before every item is answered, and nothing starts that
 * must not be cut; a whole cut becomes a trial of its setting and a measurement of its machine's running time.
 */
@Service
public class CutJobs {

    /** No machine is so much faster than its estimate; a clock is forgotten, or a button pressed too early. */
    private static final int TOO_QUICK = 10;

    private final CutJobStore store;
    private final Bookings bookings;
    private final Settings settings;
    private final Machines machines;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    CutJobs(
            CutJobStore store,
            Bookings bookings,
            Settings settings,
            Machines machines,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.bookings = bookings;
        this.settings = settings;
        this.machines = machines;
        this.events = events;
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
        return store.find(id).map(this::job);
    }

    /** The cut of an order that has not ended. */
    @Transactional(readOnly = true)
    public Optional<CutJob> openFor(OrderId order) {
        return store.openFor(order).flatMap(this::find);
    }

    /** All cuts of an order, oldest first. */
    @Transactional(readOnly = true)
    public List<CutJob> of(OrderId order) {
        return store.of(order).stream().flatMap(id -> find(id).stream()).toList();
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
        return store.latest(machineId, most).stream()
                .flatMap(id -> find(id).stream())
                .toList();
    }

    /** Looked at, and it is so. */
    @Transactional
    public CutJob check(long jobId, CheckItem item, String by) {
        return answer(jobId, new CheckAnswer(item, true, "", by, clock.instant()));
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
        return answer(jobId, new CheckAnswer(item, false, said, by, clock.instant()));
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
        CutJob job = job(store.lock(jobId).orElseThrow(() -> new Refused("cutting.job.gone")));
        if (job.ended().isPresent()) {
            throw new Refused("cutting.job.ended", job.label());
        }
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
        return told(jobId, by);
    }

    /**
     * The cut is over: what came of it, in how many passes. It becomes a trial of its setting.
     *
     * @param passes really made
     * @param photo of the edge, if one was taken
     * @throws CutTooQuick when it ran over {@value #TOO_QUICK} times faster than it was estimated
     */
    @Books
    @Transactional
    public CutJob finish(
            BookingKey key, long jobId, int passes, Finding finding, Optional<TrialPhoto> photo, String by) {
        String said = "cut " + jobId + " ended in " + passes + " passes: " + finding;
        return bookings.once(
                key,
                said,
                () -> finishNow(jobId, passes, finding, photo, by),
                CutJob::id,
                id -> find(id).orElseThrow());
    }

    private CutJob finishNow(long jobId, int passes, Finding finding, Optional<TrialPhoto> photo, String by) {
        CutJob job = running(jobId);
        Instant now = clock.instant();
        Minutes ran = Minutes.of(Duration.between(job.started().orElseThrow().at(), now));
        Optional<Minutes> expected = job.estimate()
                .map(whole -> whole.times((double) passes / job.parameters().passes()));
        if (expected.filter(minutes -> ran.value() * TOO_QUICK < minutes.value())
                .isPresent()) {
            throw new CutTooQuick(job.label(), ran, expected.get());
        }
        Trial trial = trial(job, passes, finding, photo, by);
        // other passes than planned took another time than the estimate was for: no measure of the machine
        store.end(jobId, false, finding.gapMeasured(), OptionalLong.of(trial.id()), finding.note(), by, now);
        return told(jobId, by);
    }

    /**
     * The cut is over, by the word of whoever was there, though it ran far too quickly: its clock was started late, or it
     * was cut elsewhere. It is neither a trial of its setting nor a measure of time, and costs what was estimated.
     */
    @Books
    @Transactional
    public CutJob finishWithoutTime(BookingKey key, long jobId, String note, String by) {
        String said = "cut " + jobId + " ended without its time: " + note.strip();
        return ends(
                key,
                said,
                jobId,
                () -> {
                    CutJob job = running(jobId);
                    store.end(
                            job.id(), false, Optional.empty(), OptionalLong.empty(), note.strip(), by, clock.instant());
                },
                by);
    }

    /**
     * Given up before the start, or stopped so soon that nothing can be seen on the wood; with the reason. It says
     * nothing about time or setting.
     */
    @Books
    @Transactional
    public CutJob giveUp(BookingKey key, long jobId, String reason, String by) {
        return ends(
                key,
                "cut " + jobId + " given up: " + reason,
                jobId,
                () -> {
                    CutJob job = notEnded(jobId, reason);
                    store.end(
                            job.id(),
                            true,
                            Optional.empty(),
                            OptionalLong.empty(),
                            reason.strip(),
                            by,
                            clock.instant());
                },
                by);
    }

    /**
     * Stopped while it ran, and the wood shows what the beam did: a trial of its setting like every real cut, but no
     * measure of the machine's time.
     *
     * @param passes made where it was cut at all
     */
    @Books
    @Transactional
    public CutJob breakOff(
            BookingKey key,
            long jobId,
            String reason,
            int passes,
            Finding finding,
            Optional<TrialPhoto> photo,
            String by) {
        String said = "cut " + jobId + " broken off in " + passes + " passes: " + reason + ", " + finding;
        return ends(
                key,
                said,
                jobId,
                () -> {
                    CutJob job = notEnded(jobId, reason);
                    running(jobId);
                    Trial trial = trial(job, passes, finding, photo, by);
                    store.end(
                            jobId,
                            true,
                            finding.gapMeasured(),
                            OptionalLong.of(trial.id()),
                            reason.strip(),
                            by,
                            clock.instant());
                },
                by);
    }

    private CutJob ends(BookingKey key, String said, long jobId, Runnable end, String by) {
        return bookings.once(
                key,
                said,
                () -> {
                    end.run();
                    return told(jobId, by);
                },
                CutJob::id,
                id -> find(id).orElseThrow());
    }

    private CutJob notEnded(long jobId, String reason) {
        CutJob job = job(store.lock(jobId).orElseThrow(() -> new Refused("cutting.job.gone")));
        if (job.ended().isPresent()) {
            throw new Refused("cutting.job.ended", job.label());
        }
        if (reason == null || reason.isBlank()) {
            throw new Refused("cutting.job.break.reason");
        }
        return job;
    }

    private Trial trial(CutJob job, int passes, Finding finding, Optional<TrialPhoto> photo, String by) {
        if (passes < 1 || passes > CutParameters.MOST_PASSES) {
            throw new Refused("cutting.job.passes", CutParameters.MOST_PASSES);
        }
        return settings.record(
                BookingKey.seen("cut", job.id()),
                job.setting().machine(),
                job.workpiece().board(),
                job.parameters().withPasses(passes),
                finding,
                Source.CUT,
                by,
                photo);
    }

    /** Whoever keeps clocks or plans hears of it in the same transaction. */
    private CutJob told(long jobId, String by) {
        CutJob job = find(jobId).orElseThrow();
        events.publishEvent(new CutMoved(job, by));
        return job;
    }

    private CutJob answer(long jobId, CheckAnswer answer) {
        notStarted(jobId);
        store.answer(jobId, answer);
        return find(jobId).orElseThrow();
    }

    private CutJob notStarted(long jobId) {
        CutJob job = job(store.lock(jobId).orElseThrow(() -> new Refused("cutting.job.gone")));
        if (job.ended().isPresent()) {
            throw new Refused("cutting.job.ended", job.label());
        }
        if (job.started().isPresent()) {
            throw new Refused("cutting.job.started", job.label());
        }
        return job;
    }

    private CutJob running(long jobId) {
        CutJob job = job(store.lock(jobId).orElseThrow(() -> new Refused("cutting.job.gone")));
        if (job.state() != CutJob.State.RUNNING) {
            throw new Refused(job.ended().isPresent() ? "cutting.job.ended" : "cutting.job.not.started", job.label());
        }
        return job;
    }

    /** What was checked of gap and air before others were dialled in does not count, nor a frame of another place. */
    private Map<CheckItem, CheckAnswer> answers(CutJobStore.Row row) {
        Map<CheckItem, CheckAnswer> answers = store.answers(row.id());
        row.dialled()
                .ifPresent(at -> answers.values()
                        .removeIf(answer -> CheckItem.OF_WHAT_IS_DIALLED.contains(answer.item())
                                && answer.at().isBefore(at)));
        row.placed()
                .ifPresent(at -> answers.values()
                        .removeIf(answer -> answer.item() == CheckItem.FRAME_TRACED
                                && answer.at().isBefore(at)));
        if (row.started().isEmpty()) {
            // skipped by an older program, which let it be
            answers.values().removeIf(answer -> !answer.done() && !answer.item().maySkip());
        }
        return answers;
    }

    private CutJob job(CutJobStore.Row row) {
        CutSetting setting = settings.find(row.settingId()).orElseThrow();
        return new CutJob(
                row.id(),
                row.order(),
                row.label(),
                setting,
                new Workpiece(setting.board(), row.past(), row.film(), row.filmName()),
                row.parameters(),
                row.estimate(),
                answers(row),
                row.started(),
                row.ended(),
                row.brokenOff(),
                row.trialId(),
                row.result(),
                row.note());
    }
}
