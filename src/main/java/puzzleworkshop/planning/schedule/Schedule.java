package puzzleworkshop.planning.schedule;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.HashMap;
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
 * @param cost what lateness costs in sum, in points of {@link LatenessCost}; the sequence was chosen for it
 */
public record Schedule(
        LocalDateTime madeAt,
        List<Work> work,
        Map<Long, Outlook> outlooks,
        List<Load> loads,
        int late,
        long lateMinutes,
        int setUps,
        double cost) {

    /** Stands for the end of a job that finds no place in the calendar. */
    public static final LocalDateTime NEVER = LocalDateTime.of(9999, 1, 1, 0, 0);

    public Schedule {
        work = List.copyOf(work);
        loads = List.copyOf(loads);
        outlooks = Map.copyOf(outlooks);
    }

    /** The same plan, but what it means for orders that wait is read from the other one. */
    Schedule withOutlooksOfWaiting(Schedule other) {
        Map<Long, Outlook> mixed = new HashMap<>(outlooks);
        other.outlooks.forEach((job, outlook) -> {
            if (outlook.waitsFor().isPresent()) {
                mixed.put(job, outlook);
            }
        });
        return of(madeAt, work, mixed, loads, setUps);
    }

    static Schedule of(
            LocalDateTime madeAt, List<Work> work, Map<Long, Outlook> outlooks, List<Load> loads, int setUps) {
        List<Outlook> late = outlooks.values().stream()
                .filter(Outlook::isLate)
                .sorted(Comparator.comparing(Outlook::job))
                .toList();
        return new Schedule(
                madeAt,
                work,
                outlooks,
                loads,
                late.size(),
                late.stream().mapToLong(Outlook::lateMinutes).sum(),
                setUps,
                late.stream().mapToDouble(Outlook::cost).sum());
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
     * @param waitsFor whom or what it waits for, if it does
     * @param narrow which of the workshop's means it waits for most, if any
     * @param cost in points of {@link LatenessCost}; 0 when it is on time
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
            Optional<Job.Wait> waitsFor,
            Optional<Stage.Resource> narrow,
            double cost,
            Sentence cause) {

        public boolean isLate() {
            return finish.isAfter(due);
        }

        /** On the clock; 0 when it is on time. */
        long lateMinutes() {
            return Math.max(0, ChronoUnit.MINUTES.between(due, finish));
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
