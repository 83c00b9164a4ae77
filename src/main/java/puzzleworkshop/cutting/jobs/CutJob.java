package puzzleworkshop.cutting.jobs;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Sentence;

/**
 * One cut, from its checklist to its outcome.
 *
 * @param id given by the store
 * @param order the order it is for, where there is one
 * @param label for people: the order's number, 'test cut'…
 * @param setting machine and board, with the setting's state today
 * @param workpiece what lies under the head
 * @param parameters what is dialled in for this job
 * @param estimate of the running time, before the machine's own correction; none when the lines were not known
 * @param answers the newest answer to each item of the checklist
 * @param started who and when; none before
 * @param ended who and when; none before
 * @param brokenOff whether it was stopped or given up
 * @param trialId the trial it became
 * @param result of that trial
 * @param note what was said at the end
 */
public record CutJob(
        long id,
        Optional<OrderId> order,
        String label,
        CutSetting setting,
        Workpiece workpiece,
        CutParameters parameters,
        Optional<Minutes> estimate,
        Map<CheckItem, CheckAnswer> answers,
        Optional<Signature> started,
        Optional<Signature> ended,
        boolean brokenOff,
        OptionalLong trialId,
        Optional<Trial.Result> result,
        String note) {

    /** Who did something, and when. */
    public record Signature(String by, Instant at) {}

    /** Where a job stands. */
    public enum State {
        /** Something under the head must not be cut. */
        FORBIDDEN,
        CHECKING,
        READY,
        RUNNING,
        DONE,
        BROKEN_OFF
    }

    /**
     * What a person asks for.
     *
     * @param estimate of the running time, if the lines are known
     */
    public record Wish(
            Optional<OrderId> order, String label, long machineId, Workpiece workpiece, Optional<CutTime> estimate) {}

    public CutJob {
        answers = Map.copyOf(answers);
    }

    /** The same with these answers, given now: its row is locked, so nothing else of it can have changed. */
    CutJob answered(List<CheckAnswer> now) {
        Map<CheckItem, CheckAnswer> all = new HashMap<>(answers);
        now.forEach(answer -> all.put(answer.item(), answer));
        return new CutJob(
                id,
                order,
                label,
                setting,
                workpiece,
                parameters,
                estimate,
                all,
                started,
                ended,
                brokenOff,
                trialId,
                result,
                note);
    }

    public State state() {
        if (ended.isPresent()) {
            return brokenOff ? State.BROKEN_OFF : State.DONE;
        }
        if (started.isPresent()) {
            return State.RUNNING;
        }
        if (!workpiece.forbidden().isEmpty()) {
            return State.FORBIDDEN;
        }
        return unanswered().isEmpty() ? State.READY : State.CHECKING;
    }

    /** Items of the checklist that nobody has answered. */
    public List<CheckItem> unanswered() {
        return Arrays.stream(CheckItem.values())
                .filter(item -> !answers.containsKey(item))
                .toList();
    }

    /** Items that were skipped, with their reasons. */
    public List<CheckAnswer> skipped() {
        return answers.values().stream().filter(answer -> !answer.done()).toList();
    }

    /** Why it cannot be started now; empty when it can. */
    public List<Sentence> obstacles() {
        List<Sentence> obstacles = new ArrayList<>(workpiece.forbidden());
        if (!unanswered().isEmpty()) {
            obstacles.add(Sentence.of("cutting.job.unanswered", unanswered().size()));
        }
        return obstacles;
    }

    /** From start to end; none while it has not ended, or when it never started. */
    public Optional<Minutes> took() {
        return started.flatMap(from -> ended.map(to -> Minutes.of(Duration.between(from.at(), to.at()))));
    }
}
