package puzzleworkshop.wood.asked;

import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import puzzleworkshop.measure.Size;
import puzzleworkshop.wood.ahead.LearnedWorth;
import puzzleworkshop.wood.play.Wanted;

/**
 * What is asked for as courses are drawn from it: a bounded number of sizes, in whole steps so that one more order does not make
 * another question of everything. Sizes asked for too rarely to count alone are counted together, as the next larger useful
 * size: a workshop of many odd sizes needs wood as well.
 */
public final class AskedRates {

    private static final int MOST_SIZES = 24;

    /** Blanks a week, on the average, from which a size counts alone. */
    private static final double RARE = 0.05;

    private AskedRates() {}

    /** @param rungs useful sizes, smallest area first */
    public static List<LearnedWorth.Asked> of(List<AskedSize> sizes, List<Size> rungs) {
        Map<Wanted, double[]> weeks = new LinkedHashMap<>();
        int alone = 0;
        for (AskedSize size : sizes.stream()
                .sorted(Comparator.comparingDouble(AskedRates::mean).reversed())
                .toList()) {
            boolean rare = mean(size) < RARE || alone >= MOST_SIZES;
            alone += rare ? 0 : 1;
            Wanted counted = rare ? nextLarger(size.size(), rungs) : wanted(size.size());
            double[] sum = weeks.computeIfAbsent(counted, one -> new double[Demand.WEEKS_TO_COME]);
            Arrays.setAll(sum, week -> sum[week] + size.in(week));
        }
        return weeks.entrySet().stream()
                .map(size -> new LearnedWorth.Asked(
                        size.getKey(),
                        Arrays.stream(size.getValue())
                                .mapToObj(AskedRates::inSteps)
                                .toList()))
                .filter(size -> size.weeks().stream().anyMatch(rate -> rate > 0))
                .toList();
    }

    private static double mean(AskedSize size) {
        return IntStream.range(0, Demand.WEEKS_TO_COME)
                .mapToDouble(size::in)
                .average()
                .orElse(0);
    }

    private static double inSteps(double rate) {
        double steps = rate >= 0.5 ? 20 : 100;
        return Math.round(rate * steps) / steps;
    }

    private static Wanted nextLarger(Size size, List<Size> rungs) {
        Wanted own = wanted(size);
        return rungs.stream()
                .map(AskedRates::wanted)
                .filter(rung -> own.fits(rung.width(), rung.height()))
                .findFirst()
                .orElse(own);
    }

    /** Longer side across; whole millimetres, rounded up. */
    public static Wanted wanted(Size size) {
        return new Wanted((int) Math.ceil(size.longerSide().mm() - 1e-6), (int)
                Math.ceil(size.shorterSide().mm() - 1e-6));
    }

    /** The same for a piece of wood: rounded down; at least 1 mm. */
    public static Wanted piece(Size size) {
        return new Wanted(Math.max(1, (int) Math.floor(size.longerSide().mm() + 1e-6)), Math.max(1, (int)
                Math.floor(size.shorterSide().mm() + 1e-6)));
    }
}
