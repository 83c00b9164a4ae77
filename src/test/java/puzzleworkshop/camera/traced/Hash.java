package puzzleworkshop.camera.traced;

/** Repeatable randomness by place (mixing steps of SplitMix64, Steele, Lea and Flood 2014). */
final class Hash {

    private Hash() {}

    static double of(long a, long b, long c) {
        long z = a * 0x9E3779B97F4A7C15L + b * 0xC2B2AE3D27D4EB4FL + c * 0x165667B19E3779F9L;
        z = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
        z = (z ^ z >>> 27) * 0x94D049BB133111EBL;
        return ((z ^ z >>> 31) >>> 11) * 0x1p-53;
    }

    /** Between the corners of unit cells. */
    static double smooth(double x, double y, int seed) {
        long i = (long) Math.floor(x);
        long j = (long) Math.floor(y);
        double fx = x - i;
        double fy = y - j;
        fx = fx * fx * fx * (fx * (fx * 6 - 15) + 10);
        fy = fy * fy * fy * (fy * (fy * 6 - 15) + 10);
        double above = of(i, j, seed) * (1 - fx) + of(i + 1, j, seed) * fx;
        double below = of(i, j + 1, seed) * (1 - fx) + of(i + 1, j + 1, seed) * fx;
        return above * (1 - fy) + below * fy;
    }
}
