package puzzleworkshop.insights;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OutcomeTest {

    private static final Currency EUR = Currency.getInstance("EUR");

    /** By hand: the middle of 1.3, 1.4, 1.4, 1.5 and 9 is 1.4; one bad day does not move it; 5 min become 7. */
    @Test
    void proposes_new_minutes_where_the_middle_order_took_longer() {
        List<TimeVariance.Sample> samples = new ArrayList<>();
        for (double ratio : new double[] {1.3, 1.4, 1.4, 1.5, 9}) {
            samples.add(new TimeVariance.Sample(Stage.STICK, Minutes.of(10), Minutes.of(10 * ratio)));
        }
        StageStandard standard = new StageStandard(
                Stage.STICK, Minutes.of(2), Minutes.of(5), Minutes.ZERO, Duration.ZERO, Percent.of(3));
        List<TimeVariance> drifts = TimeVariance.in(samples, Map.of(Stage.STICK, standard));
        assertThat(drifts).singleElement().satisfies(drift -> {
            assertThat(drift.ratio()).isEqualTo(1.4);
            assertThat(drift.proposed().perPuzzle()).isEqualTo(Minutes.of(7));
            assertThat(drift.proposed().setUp()).isEqualTo(Minutes.of(3));
        });
        assertThat(TimeVariance.in(samples.subList(0, 4), Map.of(Stage.STICK, standard)))
                .isEmpty();
    }

    /** Refunded in full: a share of nothing is no figure, and 0 % would look as if the work had paid for itself. */
    @Test
    void what_was_sold_for_nothing_has_no_margin() {
        Money cost = Money.of("30.00", "EUR");
        Map<CostPart, Outcome.Compared> parts = Map.of(CostPart.HANDS, new Outcome.Compared(cost, cost, true));
        Money nothing = Money.zero(EUR);
        Money agreed = Money.of("40.00", "EUR");
        assertThat(new Outcome(parts, nothing, agreed, List.of()).margin()).isEmpty();
        assertThat(new Outcome(parts, agreed, agreed, List.of()).margin()).contains(Percent.of(25));
    }

    @Test
    void keeps_a_standard_that_is_off_by_less_than_15_percent() {
        List<TimeVariance.Sample> samples = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            samples.add(new TimeVariance.Sample(Stage.MASK, Minutes.of(10), Minutes.of(11.4)));
        }
        StageStandard standard =
                new StageStandard(Stage.MASK, Minutes.of(1), Minutes.of(3), Minutes.ZERO, Duration.ZERO, Percent.ZERO);
        assertThat(TimeVariance.in(samples, Map.of(Stage.MASK, standard))).isEmpty();
    }
}
