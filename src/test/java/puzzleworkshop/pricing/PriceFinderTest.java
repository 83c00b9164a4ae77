package puzzleworkshop.pricing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static puzzleworkshop.pricing.Questions.EUR;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pricing.cost.CostBuilder;
import puzzleworkshop.pricing.cost.CostLine;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.pricing.cost.CostSheet;
import puzzleworkshop.pricing.cost.MaterialPrices;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.pricing.rates.ListPrice;
import puzzleworkshop.pricing.rates.PricePoints;
import puzzleworkshop.pricing.rates.PriceRule;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.pricing.rates.RateSet;
import puzzleworkshop.pricing.rates.Source;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.pricing.tax.VatRate;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PriceFinderTest {

    private final PriceRule rule = PriceRule.starting(EUR);

    @Test
    void what_is_shown_adds_up_to_the_minor_unit_and_keeps_the_margin_in_3_000_random_cases() {
        long seed = Seeds.from(33);
        Random random = new Random(seed);
        List<PricePoints> points = List.of(
                PricePoints.everyMinorUnit(EUR),
                PricePoints.of("1", "0.90"),
                PricePoints.of("5", "0"),
                PricePoints.of("0.5", "0"));
        for (int i = 0; i < 3_000; i++) {
            PriceRule tried = rule.withMargin(Percent.of(random.nextInt(0, 70)))
                    .withVat(VatMode.values()[random.nextInt(3)], VatRounding.values()[random.nextInt(2)])
                    .withPoints(points.get(random.nextInt(4)));
            PriceQuestion question = Questions.harbour(random.nextInt(1, 40))
                    .withCutMinutes(Minutes.of(random.nextDouble(1, 90)))
                    .withRush(random.nextBoolean())
                    .withVat(new VatRates(VatRate.values()[random.nextInt(3)], VatRate.values()[random.nextInt(3)]));
            PriceAnswer answer = Questions.answer(question, Questions.rates(), tried);
            String which = "seed " + seed + ", case " + i;
            assertThat(answer.marginBeforeDiscount()).as(which).isGreaterThanOrEqualTo(tried.margin());
            assertThat(answer.net().plus(answer.vat().vat()).sameAs(answer.toPay()))
                    .as(which)
                    .isTrue();
            Money shown = Money.sum(answer.costs().shownParts().values(), EUR);
            assertThat(shown.sameAs(answer.cost())).as(which).isTrue();
            assertThat(answer.cost().plus(answer.earns()).sameAs(answer.net()))
                    .as(which)
                    .isTrue();
            BigDecimal ending =
                    answer.unitPrice().amount().subtract(tried.points().ending());
            assertThat(ending.remainder(tried.points().step())).as(which).isEqualByComparingTo("0");
        }
    }

    @Test
    void a_sheet_full_of_one_puzzle_costs_what_the_sheet_costs() {
        // 280 x 190 mm with 3 mm around lies once on A4 (ISO 216: 210 x 297 mm); a sheet costs 1.00
        double sheet = 0.210 * 0.297;
        MaterialPrices byTheSheet = (kind, day) -> kind == RateKind.STICKER_M2 || kind == RateKind.LAMINATE_M2
                ? Optional.of(new MaterialPrices.Known(
                        Money.of(BigDecimal.valueOf(1 / sheet), EUR),
                        Source.of(day, "pricing.source.starting"),
                        Optional.of(Size.mm(210, 297))))
                : Optional.empty();
        for (int quantity : new int[] {1, 3}) {
            PriceQuestion question = Questions.sized(quantity, Size.mm(280, 190), Area.mm2(286 * 196));
            CostSheet costs = CostBuilder.build(question, Questions.rates(), byTheSheet);
            Money paper = costs.linesOf(CostPart.PRINT).stream()
                    .filter(line -> line.what().key().equals("pricing.line.sticker"))
                    .map(CostLine::amount)
                    .findFirst()
                    .orElseThrow();
            assertThat(paper.rounded().amount()).isEqualByComparingTo(quantity + ".00");
        }
        // six of 140 x 90 mm share a sheet: one of them pays its own area and the usual waste, not the sheet
        PriceQuestion small = Questions.sized(1, Size.mm(130, 80), Area.mm2(136 * 86));
        Money one = CostBuilder.build(small, Questions.rates(), byTheSheet)
                .linesOf(CostPart.PRINT)
                .getFirst()
                .amount();
        assertThat(one.amount().doubleValue()).isCloseTo(0.136 * 0.086 / 0.85 / sheet, within(0.01));
    }

    @Test
    void twenty_five_share_the_set_up_and_cost_less_each_than_one() {
        PriceAnswer one = Questions.answer(Questions.harbour(1), Questions.rates(), rule);
        PriceAnswer many = Questions.answer(Questions.harbour(25), Questions.rates(), rule);
        assertThat(many.unitPrice()).isLessThan(one.unitPrice());
        assertThat(many.goods().sameAs(many.unitPrice().times(25))).isTrue();
        // 24 minutes of set-up at 24 an hour are 9.60 an order; hands without rejects differ by exactly that share.
        Money handsOfOne = one.costs().of(CostPart.HANDS);
        Money handsOfMany = many.costs().of(CostPart.HANDS);
        assertThat(handsOfOne.times(25).minus(handsOfMany).rounded().amount()).isEqualByComparingTo("230.40");
    }

    @Test
    void rush_raises_the_price_by_the_surcharge_and_earns_more() {
        PriceAnswer usual = Questions.answer(Questions.harbour(1), Questions.rates(), rule);
        PriceAnswer rush = Questions.answer(Questions.harbour(1).withRush(true), Questions.rates(), rule);
        assertThat(rush.unitPrice().amount())
                .isCloseTo(
                        usual.unitPrice().amount().multiply(new BigDecimal("1.20")), WorkedExamplesTest.within("0.02"));
        assertThat(rush.margin()).isGreaterThan(usual.margin());
    }

    @Test
    void a_discount_lowers_the_margin_and_says_when_it_falls_under_the_floor() {
        PriceAnswer tenOff =
                Questions.answer(Questions.harbour(1).withDiscount(Percent.of(10)), Questions.rates(), rule);
        assertThat(tenOff.discount().sameAs(tenOff.goods().times(Percent.of(10)).rounded()))
                .isTrue();
        assertThat(tenOff.margin()).isLessThan(tenOff.marginBeforeDiscount());
        assertThat(tenOff.underFloor()).isFalse();
        PriceAnswer halfOff =
                Questions.answer(Questions.harbour(1).withDiscount(Percent.of(50)), Questions.rates(), rule);
        assertThat(halfOff.underFloor()).isTrue();
        assertThat(halfOff.remarks()).extracting(sentence -> sentence.key()).contains("pricing.remark.under-floor");
    }

    @Test
    void more_rejects_at_the_cut_cost_all_that_was_spent_before() {
        PriceQuestion question = Questions.harbour(1);
        CostSheet few = Questions.answer(question, Questions.rates(), rule).costs();
        CostSheet many = Questions.answer(
                        question.withRejects(puzzleworkshop.workshop.Stage.CUT, Percent.of(20)),
                        Questions.rates(),
                        rule)
                .costs();
        Money more = many.of(CostPart.REJECTS).minus(few.of(CostPart.REJECTS));
        assertThat(more).isGreaterThan(few.of(CostPart.BOARD));
    }

    @Test
    void the_price_list_takes_the_smallest_line_that_covers_the_puzzle_and_flags_one_below_cost() {
        ListPrice small = new ListPrice(Length.mm(210), Length.mm(148), 100, Money.of("19", "EUR"));
        ListPrice middle = new ListPrice(Length.mm(300), Length.mm(210), 100, Money.of("24", "EUR"));
        ListPrice large = new ListPrice(Length.mm(420), Length.mm(300), 300, Money.of("39", "EUR"));
        PriceQuestion question = Questions.harbour(1);
        assertThat(ListPrice.find(List.of(large, small, middle), question.finished(), 48))
                .hasValue(middle);
        CostSheet making = CostBuilder.build(question, Questions.rates(), MaterialPrices.none());
        PriceRule byList = rule.withMethod(PriceRule.Method.LIST);
        PriceAnswer answer =
                new PriceFinder(question, making, Questions.rates(), byList, List.of(large, small, middle)).answer();
        assertThat(answer.unitPrice().amount()).isEqualByComparingTo("24");
        assertThat(answer.underFloor()).isEqualTo(answer.margin().compareTo(Percent.of(15)) < 0);
    }

    @Test
    void currencies_without_minor_unit_are_priced_in_whole_units() {
        java.util.Currency yen = java.util.Currency.getInstance("JPY");
        PriceQuestion question = Questions.harbour(3);
        PriceQuestion inYen = new PriceQuestion(
                3,
                question.finished(),
                48,
                Money.of("180", "JPY"),
                question.stickerArea(),
                question.cutMinutes(),
                question.work(),
                Money.of("700", "JPY"),
                Money.of("700", "JPY"),
                false,
                Percent.of("7.5"),
                VatRates.STANDARD);
        PriceAnswer answer = Questions.answer(
                inYen,
                RateSet.starting(Questions.TODAY, yen),
                PriceRule.starting(yen).withVat(VatMode.ON_TOP, VatRounding.BY_LINE));
        assertThat(answer.toPay().amount().stripTrailingZeros().scale()).isLessThanOrEqualTo(0);
        assertThat(answer.cost().plus(answer.earns()).sameAs(answer.net())).isTrue();
    }
}
