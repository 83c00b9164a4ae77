package puzzleworkshop.supplies;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RestockTest {

    /** The review's case: one run of three sheets on the first day, and the advice was 25 rolls of film. */
    @Test
    void one_day_of_use_is_no_rate() {
        Restock first = Restock.of(film("46"), n("4"), 1, true, Optional.empty());
        assertThat(first.isTooEarly()).isTrue();
        assertThat(first.isDue()).isFalse();
        assertThat(first.reorderPoint()).isZero();
        assertThat(first.daysLeft()).isEmpty();
        assertThat(Restock.of(film("46"), n("4"), 27, true, Optional.empty()).isTooEarly())
                .isTrue();
    }

    /** 56 m in 28 days are 2 m a day; 7 days to come and 7 spare: buy at 28 m. To last 30 days more: 88 m, less 20 there. */
    @Test
    void four_weeks_of_use_are_a_rate() {
        Restock known = Restock.of(film("20"), n("56"), 28, true, Optional.empty());
        assertThat(known.isTooEarly()).isFalse();
        assertThat(known.usePerDay()).isEqualByComparingTo("2");
        assertThat(known.reorderPoint()).isEqualByComparingTo("28");
        assertThat(known.toBuy()).isEqualTo(2);
        assertThat(known.daysLeft()).contains(10);
        assertThat(Restock.of(film("29"), n("56"), 28, true, Optional.empty()).isDue())
                .isFalse();
    }

    @Test
    void what_has_run_out_is_bought_by_one_unit_while_its_use_is_not_known() {
        assertThat(Restock.of(film("0"), n("4"), 1, true, Optional.empty()).toBuy())
                .isEqualTo(1);
        assertThat(Restock.of(film("0"), n("0"), 0, false, Optional.empty()).isDue())
                .isFalse();
    }

    /** The owner's word stands before and instead of the reckoning, which is shown beside it. */
    @Test
    void the_owners_word_wins_over_the_use_and_needs_none() {
        Restock early = Restock.of(film("60", "60"), n("4"), 1, true, Optional.empty());
        assertThat(early.isTooEarly()).isFalse();
        assertThat(early.isDue()).isTrue();
        assertThat(early.reorderPoint()).isEqualByComparingTo("60");
        assertThat(early.toBuy()).as("one roll of 50 m passes 60 m").isEqualTo(1);
        assertThat(Restock.of(film("5", "120"), n("4"), 1, true, Optional.empty())
                        .toBuy())
                .as("5 + 3 × 50 m are the first above 120 m")
                .isEqualTo(3);
        Restock known = Restock.of(film("20", "10"), n("56"), 28, true, Optional.empty());
        assertThat(known.isDue()).as("by the use it would be").isFalse();
        assertThat(known.pointByUse()).isEqualByComparingTo("28");
        assertThat(known.reorderPoint()).isEqualByComparingTo("10");
    }

    private static SupplyItem film(String stock, String ownPoint) {
        SupplyItem item = film(stock);
        return new SupplyItem(
                item.id(),
                item.name(),
                item.kind(),
                item.useUnit(),
                item.width(),
                item.height(),
                item.purchaseUnit(),
                item.usePerPurchase(),
                item.facts(),
                item.leadDays(),
                item.spareDays(),
                Optional.of(n(ownPoint)),
                item.usual(),
                item.retired(),
                item.stock(),
                item.unitCost());
    }

    private static SupplyItem film(String stock) {
        return new SupplyItem(
                Optional.empty(),
                "Film",
                SupplyKind.LAMINATE,
                UseUnit.METRE,
                Optional.of(Length.mm(320)),
                Optional.empty(),
                "roll",
                n("50"),
                new LaserFacts(LaserFacts.Pvc.FREE, LaserFacts.Adhesive.DRY),
                7,
                7,
                true,
                false,
                n(stock),
                Money.zero(java.util.Currency.getInstance("EUR")));
    }

    private static BigDecimal n(String value) {
        return new BigDecimal(value);
    }
}
