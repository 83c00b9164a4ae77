package puzzleworkshop.planning.schedule;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.workshop.Stage;

/**
 * An order as the plan sees it: what is still to be done, and by when.
 *
 * @param id tells jobs apart
 * @param due the last moment at which it must be handed over so that the promise is kept
 * @param tasks remaining stages in their order; none when all is done
 * @param notBefore a stage, and what follows it, cannot begin before, such as sticking while laminate rests
 * @param waitsFor what it waits for, if it waits
 * @param pinned the day on which its main work is to be done, when somebody has pinned it
 * @param weight how much its lateness counts beside that of others; 1 for an ordinary order
 */
public record Job(
        long id,
        LocalDateTime due,
        List<Task> tasks,
        Map<Stage, LocalDateTime> notBefore,
        Optional<Wait> waitsFor,
        Optional<LocalDate> pinned,
        double weight) {

    public Job {
        tasks = List.copyOf(tasks);
        notBefore = Map.copyOf(notBefore);
        for (int i = 1; i < tasks.size(); i++) {
            if (tasks.get(i).stage().compareTo(tasks.get(i - 1).stage()) <= 0) {
                throw new IllegalArgumentException("Stages of job " + id + " are not in their order");
            }
        }
    }

    public static Job of(long id, LocalDateTime due, List<Task> tasks) {
        return new Job(id, due, tasks, Map.of(), Optional.empty(), Optional.empty(), 1);
    }

    public Job pinnedTo(LocalDate day) {
        return new Job(id, due, tasks, notBefore, waitsFor, Optional.of(day), weight);
    }

    public Job waiting(Wait why) {
        return new Job(id, due, tasks, notBefore, Optional.of(why), pinned, weight);
    }

    public Job dueBy(LocalDateTime other) {
        return new Job(id, other, tasks, notBefore, waitsFor, pinned, weight);
    }

    public Job withTasks(List<Task> others) {
        return new Job(id, due, others, notBefore, waitsFor, pinned, weight);
    }

    public Job weighing(double other) {
        return new Job(id, due, tasks, notBefore, waitsFor, pinned, other);
    }

    /** The moment before which the stage cannot begin; empty when nothing holds it up. */
    Optional<LocalDateTime> notBefore(Stage stage) {
        return notBefore.entrySet().stream()
                .filter(held -> held.getKey().compareTo(stage) <= 0)
                .map(Map.Entry::getValue)
                .max(Comparator.naturalOrder());
    }

    /** Whether the stage cannot begin before what the order waits for has come. */
    boolean waitsBefore(Stage stage) {
        return waitsFor.map(why -> why.before().compareTo(stage) <= 0).orElse(false);
    }

    /**
     * Why an order cannot go on.
     *
     * @param forWhat whom or what it waits for
     * @param since the day on which the wait began
     * @param before the first stage that cannot begin; what comes before it can be done meanwhile
     * @param until the moment at which the wait is reckoned to end, so that a finish can be predicted at all
     */
    public record Wait(For forWhat, LocalDate since, Stage before, LocalDateTime until) {

        /** Whom or what an order waits for. */
        public enum For {
            PICTURE,
            /** The customer's yes to the proof. */
            APPROVAL,
            /** Money agreed to come before the work. */
            PAYMENT,
            /** Sticker paper: the shelf does not hold enough for all prints. */
            PAPER,
            /** Laminate: the same. */
            FILM,
            /** None is held for it. */
            BOARD;

            public String textKey() {
                return "planning.cause.waits." + name();
            }
        }
    }
}
