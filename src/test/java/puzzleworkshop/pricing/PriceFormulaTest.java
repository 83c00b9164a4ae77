package puzzleworkshop.pricing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.support.Seeds;

/** The price is put back into the equation it must satisfy: net + shipping − cost − postage − fees = margin × net. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PriceFormulaTest {

    private static final Currency EUR = Currency.getInstance("EUR");
    private static final BigDecimal HAIR = new BigDecimal("0.000001");

    @Test
    void the_price_from_a_margin_leaves_that_margin_in_10_000_random_cases() {
        long seed = Seeds.from(20261125);
        Random random = new Random(seed);
        for (int i = 0; i < 10_000; i++) {
            Money cost = money(random, 50_000);
            Money shipping = money(random, 2_000);
            Money fixed = money(random, 200);
            Percent vat = percent(random, 2_700);
            Percent onShipping = random.nextBoolean() ? vat : percent(random, 2_700);
            Percent fee = percent(random, 1_500);
            Percent margin = percent(random, 7_500);
            Money net = new PriceFormula(fixed, fee, vat, onShipping, shipping).netForMargin(cost, margin);
            // Counted from the customer's side: gross paid, fee on it, tax handed on, postage paid out.
            BigDecimal paid = net.amount()
                    .multiply(BigDecimal.ONE.add(vat.fraction()))
                    .add(shipping.amount().multiply(BigDecimal.ONE.add(onShipping.fraction())));
            BigDecimal taken = fixed.amount().add(paid.multiply(fee.fraction()));
            BigDecimal tax = paid.subtract(net.amount()).subtract(shipping.amount());
            BigDecimal left =
                    paid.subtract(tax).subtract(taken).subtract(cost.amount()).subtract(shipping.amount());
            assertThat(left.subtract(net.amount().multiply(margin.fraction())).abs())
                    .as("seed %d, case %d", seed, i)
                    .isLessThan(HAIR);
        }
    }

    @Test
    void the_price_from_a_markup_earns_the_markup_on_cost_in_10_000_random_cases() {
        long seed = 7_2;
        Random random = new Random(seed);
        for (int i = 0; i < 10_000; i++) {
            Money cost = money(random, 50_000);
            Percent markup = percent(random, 30_000);
            PriceFormula formula = new PriceFormula(
                    money(random, 200),
                    percent(random, 1_500),
                    percent(random, 2_700),
                    percent(random, 2_700),
                    money(random, 2_000));
            Money net = formula.netForMarkup(cost, markup);
            Money earned = net.minus(cost).minus(formula.feeAt(net));
            assertThat(earned.minus(cost.times(markup)).amount().abs())
                    .as("seed %d, case %d", seed, i)
                    .isLessThan(HAIR);
        }
    }

    @Test
    void refuses_a_margin_that_fees_leave_no_room_for() {
        PriceFormula formula =
                new PriceFormula(Money.zero(EUR), Percent.of(10), Percent.of(20), Percent.of(20), Money.zero(EUR));
        assertThatThrownBy(() -> formula.netForMargin(Money.of("10", "EUR"), Percent.of(88)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("pricing.margin-out-of-reach");
    }

    private static Money money(Random random, int cents) {
        return Money.ofMinor(random.nextInt(cents), EUR);
    }

    private static Percent percent(Random random, int hundredthsOfPercent) {
        return new Percent(BigDecimal.valueOf(random.nextInt(hundredthsOfPercent), 2));
    }
}
