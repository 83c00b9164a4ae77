package puzzleworkshop.wood.ahead.buying;

import java.util.random.RandomGenerator;

/** Counts of what comes by chance. */
public final class Poisson {

    private Poisson() {}

    /** Knuth, The Art of Computer Programming 2, 3.4.1; large means in halves (a sum of such counts is one). */
    public static int draw(double mean, RandomGenerator random) {
        if (mean > 30) {
            return draw(mean / 2, random) + draw(mean / 2, random);
        }
        double limit = Math.exp(-mean);
        int count = 0;
        double product = random.nextDouble();
        while (product > limit) {
            count++;
            product *= random.nextDouble();
        }
        return count;
    }
}
