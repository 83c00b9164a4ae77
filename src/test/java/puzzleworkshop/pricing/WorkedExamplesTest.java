package puzzleworkshop.pricing;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.cost.StageByStage;
import puzzleworkshop.pricing.rates.MachineHour;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.pricing.tax.VatSum;

/** Worked examples from outside the project, to the cent; the source stands beside each. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class WorkedExamplesTest {

    private static final Currency EUR = Currency.getInstance("EUR");

    /** Textbook exercise on the machine-hour rate: 300,000 over 50,000 hours is 6 an hour. */
    @Test
    void machine_hour_rate_of_the_textbook_exercise_is_6() {
        MachineHour machine = new MachineHour(
                eur("300000"), eur("0"), number("50000"), number("0"), eur("0"), eur("0"), number("1"), List.of());
        assertMoney(machine.rate().perHour(), "6");
    }

    /** The same exercise: a unit of 2 machine hours and direct cost 3 sells at 20: profit 5, margin 25 %, markup 33.33 %. */
    @Test
    void absorbed_overhead_leaves_the_profit_margin_and_markup_of_the_exercise() {
        Money cost = eur("3").plus(eur("6").times(2));
        Money profit = eur("20").minus(cost);
        assertMoney(profit, "5");
        assertThat(Percent.share(profit, eur("20"))).isEqualTo(Percent.of(25));
        assertThat(Percent.share(profit, cost).hundredths()).isCloseTo(number("33.33"), within("0.005"));
        PriceFormula noFees = new PriceFormula(eur("0"), Percent.ZERO, Percent.ZERO, Percent.ZERO, eur("0"));
        assertMoney(noFees.netForMargin(cost, Percent.of(25)).rounded(), "20");
        assertMoney(
                noFees.netForMarkup(cost, new Percent(number("33.3333333333"))).rounded(), "20");
    }

    /** Definition of markup and margin: cost 80, price 100 is a markup of 25 % and a margin of 20 %. */
    @Test
    void cost_80_sells_at_100_by_a_margin_of_20_and_by_a_markup_of_25_percent() {
        PriceFormula noFees = new PriceFormula(eur("0"), Percent.ZERO, Percent.ZERO, Percent.ZERO, eur("0"));
        assertMoney(noFees.netForMargin(eur("80"), Percent.of(20)), "100");
        assertMoney(noFees.netForMarkup(eur("80"), Percent.of(25)), "100");
    }

    /** Penn State, ACCTG 211 open textbook, 7.2: 20,000 ÷ (400 − 250) = 133.33, so 134 units. */
    @Test
    void break_even_of_the_open_textbook_is_134_units() {
        assertThat(BreakEven.count(eur("20000"), eur("400"), eur("250"))).hasValue(134);
    }

    /** OpenStax, Principles of Accounting 2, chapter 3 (from memory): 225 units; 425 with a target profit of 16,000. */
    @Test
    void break_even_with_and_without_a_target_profit() {
        assertThat(BreakEven.count(eur("18000"), eur("100"), eur("20"))).hasValue(225);
        assertThat(BreakEven.count(eur("18000").plus(eur("16000")), eur("100"), eur("20")))
                .hasValue(425);
    }

    @Test
    void nothing_breaks_even_when_one_more_earns_nothing() {
        assertThat(BreakEven.count(eur("100"), eur("20"), eur("20"))).isEmpty();
        assertThat(BreakEven.count(eur("0"), eur("20"), eur("25"))).hasValue(0);
    }

    /** Published guidance on tax rounding: three lines of 1.24 at 10 % make 0.36 by line and 0.37 on the total, half up. */
    @Test
    void three_lines_of_1_24_at_10_percent_carry_36_cents_by_line_and_37_by_total() {
        List<VatSum.Said> lines = Stream.generate(() -> new VatSum.Said(eur("1.24"), Percent.of(10)))
                .limit(3)
                .toList();
        assertMoney(VatSum.of(lines, VatMode.ON_TOP, VatRounding.BY_LINE, EUR).vat(), "0.36");
        assertMoney(VatSum.of(lines, VatMode.ON_TOP, VatRounding.BY_TOTAL, EUR).vat(), "0.37");
    }

    /** Definition: spent ÷ (1 − r). 90 spent and one in ten fails: a good one has cost 100, the failures 10. */
    @Test
    void rejects_are_paid_by_the_good_ones_stage_by_stage() {
        List<StageByStage.Reached> reached = StageByStage.costOfGood(List.of(
                new StageByStage.Spent(puzzleworkshop.workshop.Stage.PRINT, eur("90"), Percent.of(10)),
                new StageByStage.Spent(puzzleworkshop.workshop.Stage.CUT, eur("20"), Percent.of(20)),
                new StageByStage.Spent(puzzleworkshop.workshop.Stage.PACK, eur("5"), Percent.ZERO)));
        assertMoney(reached.get(0).good(), "100");
        assertMoney(reached.get(0).lost(), "10");
        assertMoney(reached.get(1).good(), "150");
        assertMoney(reached.get(1).lost(), "30");
        assertMoney(reached.get(2).good(), "155");
    }

    static Money eur(String amount) {
        return Money.of(amount, "EUR");
    }

    static BigDecimal number(String value) {
        return new BigDecimal(value);
    }

    static org.assertj.core.data.Offset<BigDecimal> within(String offset) {
        return org.assertj.core.data.Offset.offset(new BigDecimal(offset));
    }

    private static void assertMoney(Money actual, String expected) {
        assertThat(actual.amount()).isEqualByComparingTo(expected);
    }
}
