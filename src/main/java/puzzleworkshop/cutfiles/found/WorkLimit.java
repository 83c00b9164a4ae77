package puzzleworkshop.cutfiles.found;

import puzzleworkshop.measure.Refused;

/**
 * A limit on the work that one file may cause, counted in steps and watched by the clock. A small file can ask for
 * endless work (a block of blocks of blocks); a limit on its size does not help.
 */
public final class WorkLimit {

    /** Steps to read a file; a step is about a ten-millionth of a second. Real files of 30 MB take a third of them. */
    public static final long STEPS_TO_READ = 12_000_000;

    /** Only a stop for the worst: a busy machine is slow, too. */
    private static final long MOST_NANOS = 10_000_000_000L;

    private static final long LOOK_EVERY = 4096;

    private final String name;
    private final long most;
    private final long end = System.nanoTime() + MOST_NANOS;
    private long spent;
    private long look = LOOK_EVERY;

    public WorkLimit(String name, long most) {
        this.name = name;
        this.most = most;
    }

    /** @throws Refused when the file has used up its work, or whoever asked for it has gone */
    public void spend(long steps) {
        spent += steps;
        if (spent > most) {
            throw new Refused("cutfiles.file.too_much_work", name);
        }
        if (spent > look) {
            look = spent + LOOK_EVERY;
            if (System.nanoTime() > end || Thread.currentThread().isInterrupted()) {
                throw new Refused("cutfiles.file.too_much_work", name);
            }
        }
    }
}
