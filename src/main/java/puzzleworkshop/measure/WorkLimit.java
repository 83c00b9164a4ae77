package puzzleworkshop.measure;

import java.time.Duration;
import java.util.function.Supplier;

/**
 * How much work one file from outside may cause: a number of steps and a span of time, whichever ends first. A small file
 * can ask for endless work (a block that inserts itself a thousand times a thousand times), so bounds on its size are not
 * enough. One limit goes through the whole reading of one file and is asked in every loop that the file controls:
 *
 * <pre>{@code
 * WorkLimit limit = WorkLimit.of(5_000_000, Duration.ofSeconds(3), () -> new Refused("cutfiles.too-much-work"));
 * for (Insert insert : inserts) {
 *     limit.step();
 * }
 * }</pre>
 *
 * A step is one thing made or looked at, about a microsecond of work or a hundred bytes of memory; dearer things take
 * several. It also ends when its thread is interrupted. For one thread at a time.
 */
public final class WorkLimit {

    /** Looking at the clock costs some 30 ns: done once in so many steps. */
    private static final int STEPS_BETWEEN_LOOKS = 256;

    private final long mostSteps;
    private final long end;
    private final Supplier<? extends RuntimeException> exceeded;
    private long steps;
    private long nextLook;

    private WorkLimit(long mostSteps, Duration time, Supplier<? extends RuntimeException> exceeded) {
        this.mostSteps = mostSteps;
        this.end = System.nanoTime() + time.toNanos();
        this.exceeded = exceeded;
    }

    /**
     * @param time from now on
     * @param exceeded what is thrown when either is used up, usually a {@link Refused} that says what to send instead
     */
    public static WorkLimit of(long steps, Duration time, Supplier<? extends RuntimeException> exceeded) {
        if (steps < 1 || time.isNegative()) {
            throw new IllegalArgumentException(steps + " steps in " + time);
        }
        return new WorkLimit(steps, time, exceeded);
    }

    /** For what we made ourselves. It still ends when its thread is interrupted. */
    public static WorkLimit none() {
        return new WorkLimit(
                Long.MAX_VALUE, Duration.ofDays(1000), () -> new IllegalStateException("Interrupted while reading"));
    }

    /** One step more. */
    public void step() {
        steps(1);
    }

    /**
     * So many steps more; to be asked before an array of that many things is made, and with the product of two numbers
     * from a file computed in {@code long} or by {@link #steps(long, long)}.
     *
     * @throws RuntimeException what the limit was made with, when it is used up; also for every later call
     */
    public void steps(long more) {
        if (more < 0 || more > mostSteps - steps) {
            steps = mostSteps;
            throw exceeded.get();
        }
        steps += more;
        if (steps >= nextLook) {
            nextLook = steps + STEPS_BETWEEN_LOOKS;
            look();
        }
    }

    /** Rows times columns, however large both are. */
    public void steps(long rows, long columns) {
        long high = Math.multiplyHigh(rows, columns);
        long product = rows * columns;
        boolean fits = rows >= 0 && columns >= 0 && high == 0 && product >= 0;
        steps(fits ? product : -1);
    }

    /** Looks at the clock now: before and after something that takes long and cannot be asked in between. */
    public void look() {
        if (System.nanoTime() - end > 0 || Thread.currentThread().isInterrupted()) {
            steps = mostSteps;
            throw exceeded.get();
        }
    }

    /** Steps taken so far. */
    public long taken() {
        return steps;
    }
}
