package puzzleworkshop.pattern.edges;

/**
 * The random numbers of patterns: SplitMix64 (Steele, Lea and Flood, Fast splittable pseudorandom number generators,
 * OOPSLA 2014) written out here, because the same seed must give the same pattern in twenty years, whatever becomes
 * of the library's generators.
 */
public final class SplitMix {

    private static final long GOLDEN_GAMMA = 0x9E3779B97F4A7C15L;

    private long state;

    SplitMix(long seed) {
        this.state = seed;
    }

    /** A stream of its own for one edge or vertex, so that a change in one place leaves all others as they are. */
    public static SplitMix of(long seed, int kind, int row, int column) {
        SplitMix mixed = new SplitMix(seed);
        mixed.state = mixed.nextLong() ^ ((long) kind << 48 | (long) row << 24 | column);
        mixed.state = mixed.nextLong();
        return mixed;
    }

    long nextLong() {
        state += GOLDEN_GAMMA;
        long z = state;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    /** From 0 (in) to 1 (out), 53 bits. */
    double nextShare() {
        return (nextLong() >>> 11) * 0x1.0p-53;
    }

    public double between(double low, double high) {
        return low + (high - low) * nextShare();
    }

    /** Either side with equal chance, nearer to the middle more often: the sum of two shares. */
    public double around(double middle, double spread) {
        return middle + spread * (nextShare() + nextShare() - 1);
    }

    public int sign() {
        return nextLong() < 0 ? -1 : 1;
    }
}
