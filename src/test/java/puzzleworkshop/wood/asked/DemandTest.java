package puzzleworkshop.wood.asked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Size;

@DisplayNameGeneration(ReplaceUnderscores.class)
class DemandTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 29);
    private static final Size A4 = Size.mm(319, 232);
    private static final Size A5 = Size.mm(232, 170);

    /** Judge: the gamma law of Commons Math. */
    @Test
    void the_range_holds_the_middle_eighty_percent_of_the_gamma_law() {
        for (int n : new int[] {1, 3, 8, 20, 100}) {
            GammaDistribution law = new GammaDistribution(n + 0.5, 1 / 10.0);
            assertThat(Demand.quantile(n + 0.5, 10, -1.2816))
                    .isCloseTo(law.inverseCumulativeProbability(0.1), within(0.02));
            assertThat(Demand.quantile(n + 0.5, 10, 1.2816))
                    .isCloseTo(law.inverseCumulativeProbability(0.9), within(0.02));
        }
    }

    @Test
    void twenty_blanks_in_ten_weeks_are_about_two_a_week_and_the_range_says_how_sure_that_is() {
        Demand.Learned learned =
                Demand.learn(evenly(A4, 20, 10), List.of(), TODAY).getFirst();
        assertThat(learned.seen()).isEqualTo(20);
        assertThat(learned.perWeek()).isCloseTo(2.05, within(0.25));
        assertThat(learned.low()).isBetween(1.2, 1.9);
        assertThat(learned.high()).isBetween(2.2, 3.0);
        assertThat(learned.trend()).isFalse();
    }

    @Test
    void a_blank_that_lies_turned_is_the_same_size_and_the_size_asked_for_most_comes_first() {
        List<Demand.Blank> blanks = Stream.concat(
                        evenly(A5, 4, 10).stream(),
                        Stream.concat(evenly(A4, 6, 10).stream(), evenly(A4.turned(), 6, 10).stream()))
                .toList();
        assertThat(Demand.learn(blanks, List.of(), TODAY))
                .extracting(Demand.Learned::size, Demand.Learned::seen)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(A4, 12), org.assertj.core.groups.Tuple.tuple(A5, 4));
    }

    /** By hand: 4 in the first 10 weeks, 20 in the next 10: 16 apart, more than 2·√24 = 9.8; the later half says 2.05 a week. */
    @Test
    void a_trend_that_the_data_carry_is_followed_and_a_weak_one_is_not() {
        List<Demand.Blank> rising = Stream.concat(from(A4, 4, 140, 71).stream(), from(A4, 20, 68, 1).stream())
                .toList();
        Demand.Learned learned = Demand.learn(rising, List.of(), TODAY).getFirst();
        assertThat(learned.trend()).isTrue();
        assertThat(learned.perWeek()).isCloseTo(2.05, within(0.15));
        List<Demand.Blank> weak = Stream.concat(from(A4, 9, 140, 71).stream(), from(A4, 14, 68, 1).stream())
                .toList();
        assertThat(Demand.learn(weak, List.of(), TODAY).getFirst().trend()).isFalse();
    }

    @Test
    void a_season_is_used_from_the_second_year_on() {
        List<Demand.Blank> first = Stream.concat(evenly(A4, 26, 51).stream(), from(A4, 20, 14, 1).stream())
                .toList();
        List<Demand.Blank> second = Stream.concat(
                        evenly(A4, 52, 103).stream(),
                        Stream.concat(from(A4, 20, 14, 1).stream(), from(A4, 20, 379, 366).stream()))
                .toList();
        double plain = 46.5 / 51;
        assertThat(Demand.learn(first, List.of(), TODAY).getFirst().perWeek()).isLessThan(2.2 * plain);
        double inSeason = Demand.learn(second, List.of(), TODAY).getFirst().perWeek();
        assertThat(inSeason).isGreaterThan(2 * 92.5 / 104);
    }

    /** By hand: a blank every second day is 3.5 a week, whatever part of a second year was seen. */
    @Test
    void demand_that_never_changes_has_no_season_however_much_of_the_second_year_was_seen() {
        for (int weeks : new int[] {53, 55, 61, 70, 85, 100, 104}) {
            Demand.Learned learned = Demand.learn(evenly(A4, weeks * 7 / 2, weeks), List.of(), TODAY)
                    .getFirst();
            assertThat(learned.toCome())
                    .as("after %d weeks", weeks)
                    .hasSize(26)
                    .allSatisfy(rate -> assertThat(rate).isCloseTo(3.5, within(0.1)));
        }
    }

    /**
     * By hand: one A4 a week for two years, and thirty more in each of the two Aprils. In a month of 31 days that is 34.4 in place
     * of 7.1 (all 170 blanks spread evenly over 2 × 31 of 730 days: 14.4); drawn towards the average by 2 more blanks:
     * (68.9 + 2) ÷ (14.4 + 2) = 4.3 times the 1.6 of an average week, about 7 a week. Today, in November, it is less than 1.6.
     */
    @Test
    void what_next_april_brings_is_known_in_november() {
        List<Demand.Blank> blanks = Stream.of(evenly(A4, 104, 104), april(2025), april(2026), evenly(A5, 104, 104))
                .flatMap(List::stream)
                .toList();
        List<Demand.Learned> sizes = Demand.learn(blanks, List.of(), TODAY);
        Demand.Learned a4 =
                sizes.stream().filter(one -> one.size().equals(A4)).findFirst().orElseThrow();
        Demand.Learned a5 =
                sizes.stream().filter(one -> one.size().equals(A5)).findFirst().orElseThrow();
        int april = (int) java.time.temporal.ChronoUnit.WEEKS.between(TODAY, LocalDate.of(2027, 4, 13));
        assertThat(a4.perWeek()).isLessThan(1.7);
        assertThat(a4.toCome().get(april)).isBetween(6.0, 8.0);
        assertThat(a5.toCome().get(april)).isBetween(0.7, 1.5);
    }

    private static List<Demand.Blank> april(int year) {
        return IntStream.range(0, 30)
                .mapToObj(day -> new Demand.Blank(LocalDate.of(year, 4, 1).plusDays(day), A4))
                .toList();
    }

    /** By hand: (4 + ½) ÷ 4 weeks. */
    @Test
    void a_first_busy_week_is_no_rate_yet() {
        assertThat(Demand.learn(from(A4, 4, 5, 1), List.of(), TODAY).getFirst().perWeek())
                .isCloseTo(1.125, within(1e-9));
    }

    @Test
    void a_new_workshop_starts_from_its_usual_sizes() {
        assertThat(Demand.learn(List.of(), List.of(A5, A4), TODAY))
                .extracting(Demand.Learned::size)
                .containsExactly(A5, A4);
    }

    private static List<Demand.Blank> evenly(Size size, int count, int weeks) {
        return from(size, count, weeks * 7 - 1, 1);
    }

    /** Spread evenly between so many and so many days ago. */
    private static List<Demand.Blank> from(Size size, int count, int first, int last) {
        return IntStream.range(0, count)
                .mapToObj(i -> new Demand.Blank(
                        TODAY.minusDays(first - (long) i * (first - last) / Math.max(1, count - 1)), size))
                .toList();
    }
}
