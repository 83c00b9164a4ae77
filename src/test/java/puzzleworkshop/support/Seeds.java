package puzzleworkshop.support;

/**
 * Seeds of random cases. A test names its own seed, so that a run can be repeated; {@code -Dseed=7} shifts all of them, so
 * that a nightly run tries cases nobody has seen. Print what this gives when a case fails.
 */
public final class Seeds {

    private static final long SHIFT = Long.getLong("seed", 0);

    private Seeds() {}

    /** The test's own seed, or another one in a run that asks for new cases. */
    public static long from(long own) {
        return own + SHIFT * 0x9E3779B97F4A7C15L;
    }
}
