package puzzleworkshop.cutting.time;

import java.util.Arrays;
import java.util.List;
import puzzleworkshop.measure.Minutes;

/**
 * How a machine's real running times compare with the estimates, learned from its recorded cuts.
 *
 * <p>The middle is the median of actual/estimate, the spread 1.4826 × the median absolute deviation (the usual robust
 * stand-in for a standard deviation: Rousseeuw and Croux 1993, Journal of the American Statistical Association 88).
 * One forgotten stopwatch moves neither. With fewer than {@value #ENOUGH} cuts the missing ones are taken as cuts that
 * ran to the estimate (ratio 1) and the spread is at least {@value #UNSURE} (common practice).
 *
 * @param cuts how many recorded cuts stand behind it
 * @param median actual over estimate
 * @param spread about one standard deviation of the ratio
 */
public record MachineRatio(int cuts, double median, double spread) {

    static final int ENOUGH = 5;
    static final double UNSURE = 0.15;
    /** No stopwatch is better than this. */
    private static final double LEAST_SPREAD = 0.02;
    /** Four in five lie within this many standard deviations (normal distribution: 1.2816 on either side). */
    private static final double FOUR_IN_FIVE = 1.2816;

    public MachineRatio {
        if (!(median > 0) || !(spread >= 0) || cuts < 0) {
            throw new IllegalArgumentException("A ratio is above zero, its spread not negative");
        }
    }

    /** Before the first recorded cut. */
    public static MachineRatio unmeasured() {
        return of(List.of());
    }

    /**
     * From recorded cuts.
     *
     * @param ratios actual over estimated running time, each above zero
     */
    public static MachineRatio of(List<Double> ratios) {
        int cuts = ratios.size();
        double[] sample = new double[Math.max(cuts, ENOUGH)];
        Arrays.fill(sample, 1);
        for (int i = 0; i < cuts; i++) {
            sample[i] = ratios.get(i);
        }
        double median = median(sample);
        double deviation =
                median(Arrays.stream(sample).map(x -> Math.abs(x - median)).toArray());
        double spread = Math.max(1.4826 * deviation, LEAST_SPREAD);
        return new MachineRatio(cuts, median, cuts < ENOUGH ? Math.max(spread, UNSURE) : spread);
    }

    public boolean isMeasured() {
        return cuts >= ENOUGH;
    }

    /** Corrects the running time; set-up is the workshop's own figure and stays. */
    public TimeRange applyTo(CutTime time) {
        Minutes likely = time.running().times(median).plus(time.setUp());
        double off = FOUR_IN_FIVE * spread;
        Minutes low = time.running().times(Math.max(median - off, median / 4)).plus(time.setUp());
        Minutes high = time.running().times(median + off).plus(time.setUp());
        return new TimeRange(low, likely, high);
    }

    static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}
