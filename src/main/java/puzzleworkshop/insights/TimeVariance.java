package puzzleworkshop.insights;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;

/**
 * A stage whose clocked minutes no longer agree with its standard. The ratio is the median over orders, so that one bad
 * day does not move it; it is proposed when at least five orders were clocked and it is off by at least 15 % (common
 * practice).
 *
 * @param ratio clocked ÷ standard
 * @param orders that were clocked
 * @param proposed the standard with its minutes scaled by the ratio
 */
public record TimeVariance(Stage stage, double ratio, int orders, StageStandard standard, StageStandard proposed) {

    static final int FEWEST_ORDERS = 5;
    static final double TOLERATED = 0.15;

    /** Minutes of one stage of one order: by the standard as it is now, and by the clock. */
    public record Sample(Stage stage, Minutes standard, Minutes clocked) {}

    /** The stages that drifted, in the order of the bench. */
    public static List<TimeVariance> in(List<Sample> samples, Map<Stage, StageStandard> standards) {
        Map<Stage, List<Double>> ratios = new TreeMap<>();
        for (Sample sample : samples) {
            if (sample.standard().value() > 0) {
                ratios.computeIfAbsent(sample.stage(), stage -> new ArrayList<>())
                        .add(sample.clocked().value() / sample.standard().value());
            }
        }
        List<TimeVariance> drifts = new ArrayList<>();
        ratios.forEach((stage, of) -> drift(stage, of, standards.get(stage)).ifPresent(drifts::add));
        return drifts;
    }

    private static Optional<TimeVariance> drift(Stage stage, List<Double> ratios, StageStandard standard) {
        double ratio = median(ratios);
        if (ratios.size() < FEWEST_ORDERS || Math.abs(ratio - 1) < TOLERATED || standard == null) {
            return Optional.empty();
        }
        StageStandard proposed = new StageStandard(
                stage,
                scaled(standard.setUp(), ratio, 2),
                scaled(standard.perPuzzle(), ratio, 2),
                scaled(standard.perPiece(), ratio, 600),
                standard.rest(),
                standard.rejects());
        return Optional.of(new TimeVariance(stage, ratio, ratios.size(), standard, proposed));
    }

    static double median(List<Double> values) {
        List<Double> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        int middle = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(middle) : (sorted.get(middle - 1) + sorted.get(middle)) / 2;
    }

    /** Rounded to a half minute, or for the time of a piece to a tenth of a second. */
    private static Minutes scaled(Minutes minutes, double ratio, int partsOfAMinute) {
        return Minutes.of(Math.round(minutes.value() * ratio * partsOfAMinute) / (double) partsOfAMinute);
    }
}
