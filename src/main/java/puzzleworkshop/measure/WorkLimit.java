package puzzleworkshop.measure;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
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

    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private static final long UNTOLD = Long.MAX_VALUE;

    private final long mostSteps;
    private final long end;
    private final long lastEnd;
    private final long workEnd;
    private final Supplier<? extends RuntimeException> exceeded;
    private long steps;
    private long nextLook;

    private WorkLimit(long mostSteps, Duration time, Duration longest, Supplier<? extends RuntimeException> exceeded) {
        this.mostSteps = mostSteps;
        this.end = System.nanoTime() + time.toNanos();
        this.lastEnd = System.nanoTime() + longest.toNanos();
        this.workEnd = worked() == UNTOLD ? UNTOLD : worked() + time.toNanos();
        this.exceeded = exceeded;
    }

    /**
     * @param time from now on
     * @param exceeded what is thrown when either is used up, usually a {@link Refused} that says what to send instead
     */
    public static WorkLimit of(long steps, Duration time, Supplier<? extends RuntimeException> exceeded) {
        return ofWork(steps, time, time, exceeded);
    }

    /**
     * The same where the machine may be busy with other things: what a good file takes does not count double because something
     * else runs beside it.
     *
     * @param time on the processor, of the thread that makes this limit; of a virtual thread, whose time on the processor nobody
     *     tells, by the clock
     * @param longest by the clock, from now on, however little of it was time on the processor
     */
    public static WorkLimit ofWork(
            long steps, Duration time, Duration longest, Supplier<? extends RuntimeException> exceeded) {
        if (steps < 1 || time.isNegative() || longest.compareTo(time) < 0) {
            throw new IllegalArgumentException(steps + " steps in " + time + ", " + longest + " at the longest");
        }
        return new WorkLimit(steps, time, longest, exceeded);
    }

    /** For what we made ourselves. It still ends when its thread is interrupted. */
    public static WorkLimit none() {
        Duration endless = Duration.ofDays(1000);
        return new WorkLimit(
                Long.MAX_VALUE, endless, endless, () -> new IllegalStateException("Interrupted while reading"));
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
        if (isUsedUp() || Thread.currentThread().isInterrupted()) {
            steps = mostSteps;
            throw exceeded.get();
        }
    }

    private boolean isUsedUp() {
        long now = System.nanoTime();
        // time on the processor costs more to ask for, and is never more than the clock's
        return now - end > 0 && (now - lastEnd > 0 || worked() >= workEnd);
    }

    /** Time of this thread on the processor, ns; beyond every end where nobody tells. */
    private static long worked() {
        boolean told = !Thread.currentThread().isVirtual() && THREADS.isCurrentThreadCpuTimeSupported();
        long worked = told ? THREADS.getCurrentThreadCpuTime() : -1;
        return worked < 0 ? UNTOLD : worked;
    }

    /** Steps taken so far. */
    public long taken() {
        return steps;
    }
}
