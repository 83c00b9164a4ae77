package puzzleworkshop.planning.schedule;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.workshop.Stage;

/**
 * Puts work together that is done in one go: prints ganged on a sticker sheet, prints laminated in one pull. Orders of
 * the same setting go together in the order of their dates, until the batch is full or the dates lie too far apart.
 * Batches that somebody has already made are left as they are.
 *
 * @param most orders in one batch
 * @param daysApart the dates of a batch lie at most so many days apart
 */
public record Batching(int most, int daysApart) {

    private static final Set<Stage> TOGETHER = EnumSet.of(Stage.PRINT, Stage.LAMINATE);

    /** Common practice of a small workshop; the real gang run is packed by the printing room. */
    public static final Batching USUAL = new Batching(6, 4);

    /** The same jobs, in the same order, with their batches named. */
    List<Job> applyTo(List<Job> jobs, LocalDateTime now) {
        Map<Long, List<Task>> batched = new HashMap<>();
        jobs.forEach(job -> batched.put(job.id(), new ArrayList<>(job.tasks())));
        for (Stage stage : TOGETHER) {
            Map<String, List<Job>> open = new HashMap<>();
            jobs.stream()
                    .filter(job -> job.pinned().isEmpty()
                            && job.notBefore(stage).map(r -> !r.isAfter(now)).orElse(true))
                    .filter(job -> !job.waitsBefore(stage))
                    .sorted(Comparator.comparing(Job::due).thenComparing(Job::id))
                    .forEach(job -> job.tasks().stream()
                            .filter(task -> task.stage() == stage
                                    && task.batch().isEmpty()
                                    && task.begun().isEmpty())
                            .forEach(task -> join(job, task, open, batched)));
        }
        return jobs.stream().map(job -> job.withTasks(batched.get(job.id()))).toList();
    }

    private void join(Job job, Task task, Map<String, List<Job>> open, Map<Long, List<Task>> batched) {
        List<Job> batch = open.get(task.setting());
        if (batch == null
                || batch.size() >= most
                || batch.getFirst().due().plusDays(daysApart).isBefore(job.due())) {
            batch = new ArrayList<>();
            open.put(task.setting(), batch);
        }
        batch.add(job);
        String name = "auto-" + task.stage() + "-" + batch.getFirst().id();
        batched.get(job.id()).replaceAll(other -> other.equals(task) ? task.inBatch(name) : other);
    }
}
