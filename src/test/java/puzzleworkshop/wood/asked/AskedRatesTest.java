package puzzleworkshop.wood.asked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Size;
import puzzleworkshop.wood.ahead.LearnedWorth;
import puzzleworkshop.wood.play.Wanted;

@DisplayNameGeneration(ReplaceUnderscores.class)
class AskedRatesTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 29);
    private static final List<Size> RUNGS = List.of(Size.mm(100, 80), Size.mm(319, 232), Size.mm(442, 319));

    /** By hand: 40 sizes, each once in two years, are 40 × 1½ ÷ 104 = 0.58 a week, asked for as the size that holds them all. */
    @Test
    void forty_odd_sizes_asked_for_once_in_two_years_are_asked_for_together() {
        List<Demand.Blank> odd = IntStream.range(0, 40)
                .mapToObj(i -> new Demand.Blank(TODAY.minusDays(18L * i + 3), Size.mm(330 + i, 240 + i)))
                .toList();
        List<Demand.Blank> two = java.util.stream.Stream.concat(
                        odd.stream(),
                        java.util.stream.Stream.of(new Demand.Blank(TODAY.minusDays(727), Size.mm(60, 50))))
                .toList();
        List<LearnedWorth.Asked> rates = AskedRates.of(learned(two), RUNGS);
        assertThat(rates).extracting(LearnedWorth.Asked::size).contains(new Wanted(442, 319));
        LearnedWorth.Asked large = rates.stream()
                .filter(size -> size.size().equals(new Wanted(442, 319)))
                .findFirst()
                .orElseThrow();
        assertThat(IntStream.range(0, 26).mapToDouble(large::in).average().orElseThrow())
                .isCloseTo(0.58, within(0.08));
    }

    @Test
    void of_many_sizes_the_rarer_ones_are_not_forgotten() {
        List<Demand.Blank> many = IntStream.range(0, 30 * 20)
                .mapToObj(i -> new Demand.Blank(TODAY.minusDays(i % 140), Size.mm(150 + i % 30, 100)))
                .toList();
        List<AskedSize> sizes = learned(many);
        double all = sizes.stream().mapToDouble(AskedSize::perWeek).sum();
        List<LearnedWorth.Asked> rates = AskedRates.of(sizes, RUNGS);
        assertThat(rates.size()).isLessThan(30);
        assertThat(rates.stream().mapToDouble(size -> size.in(0)).sum()).isCloseTo(all, within(0.02 * all));
    }

    private static List<AskedSize> learned(List<Demand.Blank> blanks) {
        return Demand.learn(blanks, List.of(), TODAY).stream()
                .map(AskedSize::of)
                .toList();
    }
}
