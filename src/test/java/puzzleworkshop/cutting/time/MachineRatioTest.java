package puzzleworkshop.cutting.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class MachineRatioTest {

    private static final CutTime TEN_MINUTES = new CutTime(Minutes.of(8), Minutes.of(1), Minutes.of(1), Minutes.of(5));

    @Test
    void before_any_cut_the_estimate_stands_in_the_middle_of_a_wide_range() {
        TimeRange range = MachineRatio.unmeasured().applyTo(TEN_MINUTES);
        assertThat(range.likely()).isEqualTo(Minutes.of(15));
        assertThat(range.high().value()).isCloseTo(15 + 10 * 1.2816 * 0.15, within(1e-9));
    }

    /** Commons Math's median as an independent judge; 1.4826 makes the deviation comparable to a normal one. */
    @Test
    void takes_the_median_and_its_absolute_deviation() {
        List<Double> ratios = List.of(1.10, 1.12, 1.08, 1.15, 1.11, 1.09, 1.30);
        MachineRatio ratio = MachineRatio.of(ratios);
        double[] values = ratios.stream().mapToDouble(Double::doubleValue).toArray();
        double median = new Median().evaluate(values);
        double[] off = ratios.stream().mapToDouble(r -> Math.abs(r - median)).toArray();
        assertThat(ratio.median()).isCloseTo(median, within(1e-12));
        assertThat(ratio.spread()).isCloseTo(1.4826 * new Median().evaluate(off), within(1e-12));
    }

    @Test
    void one_forgotten_stopwatch_hardly_moves_it() {
        List<Double> ratios = new ArrayList<>(List.of(1.10, 1.12, 1.08, 1.15, 1.11, 1.09));
        MachineRatio before = MachineRatio.of(ratios);
        ratios.add(14.0);
        MachineRatio after = MachineRatio.of(ratios);
        assertThat(after.median()).isCloseTo(before.median(), within(0.02));
        assertThat(after.spread()).isLessThan(0.06);
    }

    @Test
    void about_four_in_five_cuts_fall_into_the_range() {
        long seed = Seeds.from(7);
        Random random = new Random(seed);
        List<Double> ratios = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            ratios.add(1.1 + 0.08 * random.nextGaussian());
        }
        TimeRange range = MachineRatio.of(ratios).applyTo(TEN_MINUTES);
        int inside = 0;
        for (int i = 0; i < 2_000; i++) {
            double actual = 5 + 10 * (1.1 + 0.08 * random.nextGaussian());
            inside += actual >= range.low().value() && actual <= range.high().value() ? 1 : 0;
        }
        assertThat(inside / 2_000.0).as("seed %d", seed).isBetween(0.75, 0.85);
    }
}
