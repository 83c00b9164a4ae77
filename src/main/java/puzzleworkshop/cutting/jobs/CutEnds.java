package puzzleworkshop.cutting.jobs;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Source;
import puzzleworkshop.cutting.settings.TrialPhoto;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Refused;

/**
 * What came of a cut, booked once. A whole cut becomes a trial of its setting and a measurement of its machine's running time; one
 * that was broken off a trial only, one that was given up neither.
 */
@Service
public class CutEnds {

    /** No machine is so much faster than its estimate; a clock is forgotten, or a button pressed too early. */
    private static final int TOO_QUICK = 10;

    private final CutJobStore store;
    private final CutBook book;
    private final Bookings bookings;
    private final Settings settings;
    private final Clock clock;

    CutEnds(CutJobStore store, CutBook book, Bookings bookings, Settings settings, Clock clock) {
        this.store = store;
        this.book = book;
        this.bookings = bookings;
        this.settings = settings;
        this.clock = clock;
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
                id -> book.find(id).orElseThrow());
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
        return book.told(jobId, by);
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
                    return book.told(jobId, by);
                },
                CutJob::id,
                id -> book.find(id).orElseThrow());
    }

    private CutJob notEnded(long jobId, String reason) {
        CutJob job = book.notEnded(jobId);
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

    private CutJob running(long jobId) {
        CutJob job = book.locked(jobId);
        if (job.state() != CutJob.State.RUNNING) {
            throw new Refused(job.ended().isPresent() ? "cutting.job.ended" : "cutting.job.not.started", job.label());
        }
        return job;
    }
}
