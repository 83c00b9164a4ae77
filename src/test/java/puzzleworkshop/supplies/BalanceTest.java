package puzzleworkshop.supplies;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class BalanceTest {

    /** Weighted average by definition: 10 at 2.00 and 30 at 3.00 are 40 at 2.75; what leaves goes at 2.75. */
    @Test
    void a_purchase_mixes_its_price_into_what_is_there() {
        Balance balance = balance("10", "2").plus(n("30"), n("3"));
        assertThat(balance.average()).isEqualByComparingTo("2.75");
        assertThat(balance.minus(n("25")).average()).isEqualByComparingTo("2.75");
    }

    @Test
    void an_empty_or_owed_shelf_takes_the_new_price() {
        assertThat(balance("0", "2").plus(n("5"), n("3")).average()).isEqualByComparingTo("3");
        assertThat(balance("-1", "2").plus(n("5"), n("3")).average()).isEqualByComparingTo("3");
    }

    /** What was paid is on the shelf or has left it: no value is made or lost beyond the sixth digit of each step. */
    @Test
    void value_paid_is_value_used_and_value_left_in_2_000_random_ledgers() {
        long seed = Seeds.from(50);
        Random random = new Random(seed);
        for (int i = 0; i < 2_000; i++) {
            Balance balance = balance("0", "0");
            BigDecimal paid = BigDecimal.ZERO;
            BigDecimal left = BigDecimal.ZERO;
            for (int step = 0; step < 30; step++) {
                BigDecimal quantity = BigDecimal.valueOf(random.nextInt(1, 500));
                if (random.nextBoolean()) {
                    BigDecimal cost = BigDecimal.valueOf(random.nextInt(0, 5_000), 3);
                    balance = balance.plus(quantity, cost);
                    paid = paid.add(quantity.multiply(cost));
                } else {
                    BigDecimal out = quantity.min(balance.stock());
                    left = left.add(out.multiply(balance.average()));
                    balance = balance.minus(out);
                }
            }
            BigDecimal onShelf = balance.stock().multiply(balance.average());
            assertThat(paid.subtract(left).subtract(onShelf).abs())
                    .as("seed %d, case %d", seed, i)
                    .isLessThan(new BigDecimal("0.1"));
        }
    }

    /** Common practice: 120 used in 60 days, 7 days to come and 7 spare: buy again at 28. */
    @Test
    void buys_again_when_the_stock_lasts_only_through_the_lead_time() {
        assertThat(ReorderPoint.of(n("120"), 60, 7, 7)).isEqualByComparingTo("28");
    }

    private static Balance balance(String stock, String average) {
        return new Balance(n(stock), n(average));
    }

    private static BigDecimal n(String value) {
        return new BigDecimal(value);
    }
}
