package puzzleworkshop.pricing.rates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineCosts;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.machines.WearPart;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@Transactional
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RateBookIT {

    @Autowired
    Machines machines;

    @Autowired
    RateBook book;

    @Autowired
    Pricing pricing;

    @Autowired
    JdbcClient jdbc;

    private final LocalDate march = LocalDate.of(2026, 3, 1);

    @Test
    void a_rate_holds_from_its_day_and_the_day_before_keeps_the_old_one() {
        book.set(RateKind.WAGE_HOUR, new BigDecimal("25"), march, "", "mara");
        book.set(RateKind.WAGE_HOUR, new BigDecimal("28"), march.plusMonths(1), "new agreement", "mara");
        assertThat(book.on(march.minusDays(1)).held(RateKind.WAGE_HOUR).starting())
                .isTrue();
        assertThat(book.on(march.plusDays(30)).number(RateKind.WAGE_HOUR)).isEqualByComparingTo("25");
        assertThat(book.on(march.plusMonths(1)).number(RateKind.WAGE_HOUR)).isEqualByComparingTo("28");
        assertThat(book.history(RateKind.WAGE_HOUR)).hasSize(2);
    }

    @Test
    void of_two_entries_for_one_day_the_later_one_holds() {
        book.set(RateKind.BOX, new BigDecimal("1.10"), march, "", "mara");
        book.set(RateKind.BOX, new BigDecimal("1.30"), march, "typed wrong before", "mara");
        assertThat(book.on(march).number(RateKind.BOX)).isEqualByComparingTo("1.30");
    }

    @Test
    void an_entered_rate_cannot_be_rewritten_behind_the_programs_back() {
        book.set(RateKind.BOX, new BigDecimal("1.10"), march, "", "mara");
        assertThatThrownBy(() -> jdbc.sql("update rate set value = 0").update()).hasMessageContaining("never changed");
    }

    @Test
    void a_rule_and_a_list_saved_as_they_stand_are_not_entered_again() {
        PriceRule rule = new PriceRule(
                march,
                PriceRule.Method.MARGIN,
                Percent.of("35"),
                Percent.of("60"),
                Percent.of("20"),
                Percent.of("15"),
                VatMode.NONE,
                VatRounding.BY_LINE,
                PricePoints.of("1.00", "0.90"));
        List<ListPrice> list = List.of(
                new ListPrice(Length.mm(300), Length.mm(200), 48, Money.of(new BigDecimal("39.90"), book.currency())),
                new ListPrice(Length.mm(400), Length.mm(300), 99, Money.of(new BigDecimal("59.90"), book.currency())));
        book.set(rule, "mara");
        book.setList(march, list, "mara");
        int rules = rows("price_rule");
        int lists = rows("price_list");
        book.set(book.rule(march.plusDays(3)).from(march.plusDays(3)), "mara");
        book.setList(march.plusDays(3), book.list(march.plusDays(3)), "mara");
        assertThat(rows("price_rule")).isEqualTo(rules);
        assertThat(rows("price_list")).isEqualTo(lists);
        book.set(rule.withMargin(Percent.of("36")), "mara");
        book.setList(march, list.subList(0, 1), "mara");
        assertThat(rows("price_rule")).isEqualTo(rules + 1);
        assertThat(rows("price_list")).isEqualTo(lists + 1);
    }

    private int rows(String table) {
        return jdbc.sql("select count(*) from " + table).query(Integer.class).single();
    }

    @Test
    void refuses_figures_outside_their_range() {
        assertThatThrownBy(() -> book.set(RateKind.MACHINE_LIFE_HOURS, BigDecimal.ZERO, march, "", "mara"))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> book.set(RateKind.MACHINE_RESIDUAL, new BigDecimal("50"), march, "", "mara"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("at-the-machine");
    }

    @Test
    void what_stands_at_the_machine_is_what_its_hour_costs_in_a_price() {
        PriceQuestion question = pricing.typical(Size.mm(300, 200), 48);
        Money before = pricing.quote(question, march).cost();
        assertThat(book.on(march).held(RateKind.MACHINE_PRICE).starting()).isTrue();
        Machine usual = Machine.usual("Bench laser", before.currency());
        machines.save(new Machine(
                0,
                usual.name(),
                usual.bed(),
                usual.beam(),
                usual.motion(),
                usual.bowLimit(),
                usual.setUp(),
                usual.passPause(),
                new MachineCosts(
                        Money.of("4400", "EUR"),
                        Money.of("400", "EUR"),
                        2_000,
                        0.5,
                        Money.of("120", "EUR"),
                        600,
                        List.of(new WearPart("Lens", Money.of("30", "EUR"), 300))),
                false,
                false));
        // (4400 - 400) / 2000 + 0.5 x 0.30 + 120 / 600 + 30 / 300 = 2.00 + 0.15 + 0.20 + 0.10 an hour
        RateSet rates = book.on(march);
        assertThat(rates.machine().rate().perHour().amount()).isEqualByComparingTo("2.45");
        assertThat(rates.number(RateKind.MACHINE_PRICE)).isEqualByComparingTo("4400");
        assertThat(pricing.quote(question, march).cost()).isGreaterThan(before);
    }

    @Test
    void an_old_day_is_priced_by_its_old_rates() {
        PriceQuestion question = pricing.typical(Size.mm(300, 200), 48);
        PriceAnswer before = pricing.quote(question, march);
        book.set(RateKind.WAGE_HOUR, new BigDecimal("48"), march.plusDays(1), "", "mara");
        assertThat(pricing.quote(question, march)).isEqualTo(before);
        assertThat(pricing.quote(question, march.plusDays(1)).cost()).isGreaterThan(before.cost());
    }

    @Test
    void rule_and_list_come_back_as_entered_and_the_list_is_checked_against_cost() {
        PriceRule rule = new PriceRule(
                march,
                PriceRule.Method.LIST,
                Percent.of(45),
                Percent.of(80),
                Percent.of(20),
                Percent.of("12.5"),
                VatMode.INCLUDED,
                VatRounding.BY_LINE,
                PricePoints.of("1.0000", "0.9000"));
        book.set(rule, "mara");
        assertThat(book.rule(march)).isEqualTo(rule);
        ListPrice cheap = new ListPrice(Length.mm(420), Length.mm(297), 300, Money.of("9.90", "EUR"));
        ListPrice dear = new ListPrice(Length.mm(210), Length.mm(148), 60, Money.of("89.90", "EUR"));
        book.setList(march, List.of(cheap, dear), "mara");
        assertThat(book.list(march)).containsExactly(dear, cheap);
        assertThat(pricing.checkedList())
                .extracting(checked -> checked.answer().underFloor())
                .containsExactly(false, true);
    }
}
