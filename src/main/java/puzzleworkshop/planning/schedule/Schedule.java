package puzzleworkshop.planning.schedule;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.workshop.Stage;

/**
 * The plan of all waiting work.
 *
 * @param madeAt the moment from which it counts
 * @param work every stage of every job with its time, in the order of time
 * @param outlooks per job id
 * @param loads per day from the first on, for four weeks, and resource
 * @param late how many jobs miss their due moment
 * @param lateMinutes by how much in sum, on the clock
 * @param setUps how many times something is set up
 */
public record Schedule(
        LocalDateTime madeAt,
        List<Work> work,
        Map<Long, Outlook> outlooks,
        List<Load> loads,
        int late,
        long lateMinutes,
        int setUps) {

    /** Stands for the end of a job that finds no place in the calendar. */
    public static final LocalDateTime NEVER = LocalDateTime.of(9999, 1, 1, 0, 0);

    public Schedule {
        work = List.copyOf(work);
        loads = List.copyOf(loads);
        outlooks = Map.copyOf(outlooks);
    }

    /**
     * One stage of one job in the plan; jobs of a batch share the same times.
     *
     * @param by name of the person, absent where nobody in particular is needed
     * @param setUpSaved the machine still has the right setting
     * @param batchSize jobs done in the same go, 1 for one alone
     */
    public record Work(
            long job,
            Stage stage,
            LocalDateTime start,
            LocalDateTime end,
            Optional<String> by,
            boolean setUpSaved,
            int batchSize) {}

    /**
     * What the plan means for one job.
     *
     * @param finish when it can be handed over; {@link #NEVER} when the calendar has no place for it
     * @param slackMinutes working minutes of the workshop between finish and due; negative when late
     * @param lateDays calendar days by which the due day is missed; 0 when it is kept
     * @param mainDay the day of its cut, or of its next stage when it is cut already
     * @param hold whom or what it waits for, if it does
     * @param narrow which of the workshop's means it waits for most, if any
     * @param cause why, in words
     */
    public record Outlook(
            long job,
            LocalDateTime finish,
            LocalDateTime due,
            int slackMinutes,
            long lateDays,
            DueVerdict verdict,
            Optional<LocalDate> mainDay,
            Optional<Job.Hold> hold,
            Optional<Stage.Resource> narrow,
            Sentence cause) {

        public boolean isLate() {
            return finish.isAfter(due);
        }
    }

    /** What the day holds for the resource. */
    public Load load(LocalDate day, Stage.Resource resource) {
        return loads.stream()
                .filter(load -> load.day().equals(day) && load.resource() == resource)
                .findFirst()
                .orElse(new Load(day, resource, 0, 0, 0, 0));
    }

    public Outlook of(long job) {
        return outlooks.get(job);
    }

    /** The work of one job, in the order of its stages. */
    public List<Work> workOf(long job) {
        return work.stream().filter(w -> w.job() == job).toList();
    }
}
