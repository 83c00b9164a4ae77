package puzzleworkshop.cutting.jobs;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.measure.Refused;

/** Cuts as they stand in the book: read with their setting and the checks that count, locked, and told of when they move. */
@Component
class CutBook {

    private final CutJobStore store;
    private final Settings settings;
    private final ApplicationEventPublisher events;

    CutBook(CutJobStore store, Settings settings, ApplicationEventPublisher events) {
        this.store = store;
        this.settings = settings;
        this.events = events;
    }

    Optional<CutJob> find(long id) {
        return store.find(id).map(this::job);
    }

    /** Several at once, in the order of the ids; those that do not exist are left out. */
    List<CutJob> all(List<Long> ids) {
        List<CutJobStore.Row> rows = store.find(ids);
        Map<Long, CutSetting> known = settings.find(
                rows.stream().map(CutJobStore.Row::settingId).distinct().toList());
        Map<Long, Map<CheckItem, CheckAnswer>> answers = store.answers(ids);
        return rows.stream()
                .map(row -> job(
                        row,
                        known.get(row.settingId()),
                        answers.getOrDefault(row.id(), new EnumMap<>(CheckItem.class))))
                .sorted(Comparator.comparingInt(job -> ids.indexOf(job.id())))
                .toList();
    }

    /** @throws Refused when there is none */
    CutJob locked(long jobId) {
        return job(store.lock(jobId).orElseThrow(() -> new Refused("cutting.job.gone")));
    }

    /**
     * Locked as well.
     *
     * @throws Refused when its outcome is booked
     */
    CutJob notEnded(long jobId) {
        CutJob job = locked(jobId);
        if (job.ended().isPresent()) {
            throw new Refused("cutting.job.ended", job.label());
        }
        return job;
    }

    /** Whoever keeps clocks or plans hears of it in the same transaction. */
    CutJob told(long jobId, String by) {
        CutJob job = find(jobId).orElseThrow();
        events.publishEvent(new CutMoved(job, by));
        return job;
    }

    /** What was checked of gap and air before others were dialled in does not count, nor a frame of another place. */
    private static Map<CheckItem, CheckAnswer> valid(CutJobStore.Row row, Map<CheckItem, CheckAnswer> answers) {
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
        return job(row, settings.find(row.settingId()).orElseThrow(), store.answers(row.id()));
    }

    private static CutJob job(CutJobStore.Row row, CutSetting setting, Map<CheckItem, CheckAnswer> answers) {
        return new CutJob(
                row.id(),
                row.order(),
                row.label(),
                setting,
                new Workpiece(setting.board(), row.past(), row.film(), row.filmName()),
                row.parameters(),
                row.estimate(),
                valid(row, answers),
                row.started(),
                row.ended(),
                row.brokenOff(),
                row.trialId(),
                row.result(),
                row.note());
    }
}
