package puzzleworkshop.pricing.tax;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Random;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.support.Seeds;

/** Tax on several rates, with Joda-Money as an independent judge of every amount. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class VatSumTest {

    private static final List<Percent> RATES = List.of(Percent.of(19), Percent.of("5.5"), Percent.of(7), Percent.ZERO);

    @Test
    void tax_on_top_rounded_by_line_or_on_the_total_is_what_joda_money_gives_in_5_000_random_cases() {
        long seed = 1_24;
        Random random = new Random(seed);
        List<String> codes = List.of("EUR", "JPY", "KWD");
        for (int i = 0; i < 5_000; i++) {
            String code = codes.get(i % 3);
            Currency currency = Currency.getInstance(code);
            CurrencyUnit unit = CurrencyUnit.of(code);
            List<VatSum.Said> lines = new ArrayList<>();
            for (int n = random.nextInt(1, 9); n > 0; n--) {
                lines.add(new VatSum.Said(
                        Money.ofMinor(random.nextLong(-500, 50_000), currency), RATES.get(random.nextInt(4))));
            }
            String which = "seed " + seed + ", case " + i;
            org.joda.money.Money byLine = org.joda.money.Money.zero(unit);
            org.joda.money.Money byTotal = org.joda.money.Money.zero(unit);
            for (Percent rate : RATES) {
                BigMoney said = BigMoney.zero(unit);
                for (VatSum.Said line : lines) {
                    if (line.rate().equals(rate)) {
                        BigMoney amount = BigMoney.of(unit, line.amount().amount());
                        said = said.plus(amount);
                        byLine = byLine.plus(tax(amount, rate));
                    }
                }
                byTotal = byTotal.plus(tax(said, rate));
            }
            VatSum lineByLine = VatSum.of(lines, VatMode.ON_TOP, VatRounding.BY_LINE, currency);
            VatSum onTotal = VatSum.of(lines, VatMode.ON_TOP, VatRounding.BY_TOTAL, currency);
            assertThat(lineByLine.vat().amount()).as(which).isEqualByComparingTo(byLine.getAmount());
            assertThat(onTotal.vat().amount()).as(which).isEqualByComparingTo(byTotal.getAmount());
            assertThat(onTotal.net().plus(onTotal.vat()).sameAs(onTotal.gross()))
                    .as(which)
                    .isTrue();
        }
    }

    @Test
    void tax_within_a_price_is_what_joda_money_takes_out_of_it_in_5_000_random_cases() {
        long seed = Seeds.from(19);
        Random random = new Random(seed);
        Currency euro = Currency.getInstance("EUR");
        for (int i = 0; i < 5_000; i++) {
            Money gross = Money.ofMinor(random.nextLong(1, 1_000_000), euro);
            Percent rate = RATES.get(random.nextInt(4));
            BigMoney net = BigMoney.of(CurrencyUnit.EUR, gross.amount())
                    .withScale(20)
                    .dividedBy(BigDecimal.ONE.add(rate.fraction()), RoundingMode.HALF_EVEN);
            BigDecimal judge = BigMoney.of(CurrencyUnit.EUR, gross.amount())
                    .minus(net)
                    .toMoney(RoundingMode.HALF_UP)
                    .getAmount();
            assertThat(VatSum.taxOf(gross, rate, VatMode.INCLUDED).amount())
                    .as("seed %d, case %d", seed, i)
                    .isEqualByComparingTo(judge);
        }
    }

    private static org.joda.money.Money tax(BigMoney amount, Percent rate) {
        return amount.multipliedBy(rate.fraction()).toMoney(RoundingMode.HALF_UP);
    }
}
