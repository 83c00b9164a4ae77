package puzzleworkshop.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class MoneyTest {

    private static final Currency EUR = Currency.getInstance("EUR");

    /** ISO 4217: JPY has no minor unit, EUR two digits, KWD three. */
    @Test
    void rounds_to_the_minor_unit_of_its_currency() {
        assertThat(Money.of("1.5", "JPY").rounded().amount()).isEqualByComparingTo("2");
        assertThat(Money.of("1.005", "EUR").rounded().amount()).isEqualByComparingTo("1.01");
        assertThat(Money.of("1.0005", "KWD").rounded().amount()).isEqualByComparingTo("1.001");
    }

    /** Joda-Money as an independent judge of rounding. */
    @Test
    void rounds_as_joda_money_does_in_10_000_random_cases() {
        long seed = Seeds.from(20261125);
        Random random = new Random(seed);
        List<String> codes = List.of("JPY", "EUR", "KWD", "USD", "CHF");
        for (int i = 0; i < 10_000; i++) {
            String code = codes.get(random.nextInt(codes.size()));
            BigDecimal amount = BigDecimal.valueOf(random.nextLong(-10_000_000, 10_000_000), 5);
            BigDecimal judge = org.joda.money.Money.of(CurrencyUnit.of(code), amount, RoundingMode.HALF_UP)
                    .getAmount();
            assertThat(Money.of(amount, Currency.getInstance(code)).rounded().amount())
                    .as("seed %d, case %d: %s %s", seed, i, code, amount)
                    .isEqualByComparingTo(judge);
        }
    }

    /**
     * Largest remainders reckoned once more in Joda-Money: each part is its share cut down to whole units, and those with the
     * largest rest got one more. Joda-Money has no allocation of its own, so its exact arithmetic judges the parts.
     */
    @Test
    void allocates_as_largest_remainders_in_joda_money_do_in_5_000_random_cases() {
        long seed = Seeds.from(1792);
        Random random = new Random(seed);
        List<String> codes = List.of("JPY", "EUR", "KWD");
        for (int i = 0; i < 5_000; i++) {
            CurrencyUnit unit = CurrencyUnit.of(codes.get(i % 3));
            Money whole = Money.ofMinor(random.nextLong(0, 1_000_000), Currency.getInstance(unit.getCode()));
            List<BigDecimal> weights = IntStream.range(0, random.nextInt(1, 12))
                    .mapToObj(n ->
                            BigDecimal.valueOf(random.nextInt(0, 1_000)).add(n == 0 ? BigDecimal.ONE : BigDecimal.ZERO))
                    .toList();
            BigDecimal total = weights.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
            List<Money> parts = whole.allocate(weights);
            String which = "seed " + seed + ", case " + i;
            org.joda.money.Money sum = org.joda.money.Money.zero(unit);
            BigDecimal leastRaised = BigDecimal.ONE;
            BigDecimal mostLeft = BigDecimal.ZERO;
            for (int p = 0; p < parts.size(); p++) {
                BigMoney share = BigMoney.of(unit, whole.amount())
                        .withScale(24)
                        .multipliedBy(weights.get(p))
                        .dividedBy(total, RoundingMode.HALF_EVEN);
                org.joda.money.Money floor = share.toMoney(RoundingMode.FLOOR);
                org.joda.money.Money part =
                        org.joda.money.Money.of(unit, parts.get(p).amount());
                BigDecimal rest = share.minus(floor).getAmount().movePointRight(unit.getDecimalPlaces());
                boolean raised = part.equals(floor.plusMinor(1));
                assertThat(raised || part.equals(floor)).as(which).isTrue();
                leastRaised = raised ? leastRaised.min(rest) : leastRaised;
                mostLeft = raised ? mostLeft : mostLeft.max(rest);
                sum = sum.plus(part);
            }
            assertThat(sum.getAmount()).as(which).isEqualByComparingTo(whole.amount());
            assertThat(leastRaised).as(which).isGreaterThanOrEqualTo(mostLeft.subtract(new BigDecimal("1e-12")));
        }
    }

    @Test
    void parts_of_an_allocation_add_up_to_the_whole_and_are_within_one_unit_of_their_share() {
        long seed = Seeds.from(4217);
        Random random = new Random(seed);
        for (int i = 0; i < 5_000; i++) {
            Money whole = Money.ofMinor(random.nextLong(0, 1_000_000), EUR);
            List<BigDecimal> weights = IntStream.range(0, random.nextInt(1, 12))
                    .mapToObj(n -> BigDecimal.valueOf(random.nextInt(1, 1_000)))
                    .toList();
            BigDecimal total = weights.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
            List<Money> parts = whole.allocate(weights);
            assertThat(Money.sum(parts, EUR).sameAs(whole))
                    .as("seed %d, case %d", seed, i)
                    .isTrue();
            for (int p = 0; p < parts.size(); p++) {
                BigDecimal share = whole.amount().multiply(weights.get(p)).divide(total, 12, RoundingMode.HALF_UP);
                assertThat(parts.get(p).amount().subtract(share).abs()).isLessThan(new BigDecimal("0.01"));
            }
        }
    }

    @Test
    void refuses_to_mix_currencies() {
        assertThatThrownBy(() -> Money.of("1", "EUR").plus(Money.of("1", "USD")))
                .hasMessage("Cannot mix EUR and USD");
    }

    /** Definition: cost 80, price 100 is a margin of 20 %. */
    @Test
    void a_share_of_an_amount_is_a_percentage() {
        Money price = Money.of("100", "EUR");
        assertThat(Percent.share(price.minus(Money.of("80", "EUR")), price)).isEqualTo(Percent.of(20));
    }
}
