package puzzleworkshop.cutting.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.stat.interval.ClopperPearsonInterval;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Judged by Apache Commons Math, whose bound is the beta quantile, and, where all were good, by the closed form: a share p
 * with p^n = 0.05 (Clopper and Pearson, Biometrika 26, 1934).
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SuccessBoundTest {

    @ParameterizedTest
    @CsvSource({"1", "3", "59", "179", "180", "181", "200", "400", "5000"})
    void where_all_were_good_the_share_is_what_comes_out_at_one_in_twenty(int cuts) {
        assertThat(new SuccessBound(cuts, cuts).atLeast())
                .isCloseTo(Math.pow(0.05, 1.0 / cuts), within(1e-7))
                .isLessThan(1);
    }

    @ParameterizedTest
    @CsvSource({"1,2", "7,9", "19,20", "55,60", "180,181", "199,200", "380,400", "200,400", "3,900", "2999,3000"})
    void the_share_is_the_lower_bound_that_a_library_finds(int good, int cuts) {
        double oneSided = new BetaDistribution(good, cuts - good + 1.0).inverseCumulativeProbability(0.05);
        double sideOfTwo =
                new ClopperPearsonInterval().createInterval(cuts, good, 0.90).getLowerBound();
        assertThat(new SuccessBound(good, cuts).atLeast())
                .isCloseTo(oneSided, within(1e-6))
                .isCloseTo(sideOfTwo, within(1e-6));
    }

    @Test
    void before_the_first_good_cut_nothing_is_sure() {
        assertThat(new SuccessBound(0, 0).atLeast()).isZero();
        assertThat(new SuccessBound(0, 7).atLeast()).isZero();
    }

    @Test
    void one_more_good_cut_never_makes_less_sure() {
        double before = 0;
        for (int good = 1; good <= 600; good++) {
            double now = new SuccessBound(good, good).atLeast();
            assertThat(now).as("%d good", good).isGreaterThan(before).isLessThan(1);
            before = now;
        }
    }
}
