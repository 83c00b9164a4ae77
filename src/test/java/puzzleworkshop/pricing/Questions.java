package puzzleworkshop.pricing;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pricing.cost.CostBuilder;
import puzzleworkshop.pricing.cost.CostSheet;
import puzzleworkshop.pricing.cost.MaterialPrices;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.pricing.cost.StageWork;
import puzzleworkshop.pricing.rates.PriceRule;
import puzzleworkshop.pricing.rates.RateSet;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.workshop.Stage;

/** A made-up order to price in tests: 300 × 200 mm, 48 pieces. */
final class Questions {

    static final Currency EUR = Currency.getInstance("EUR");
    static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private Questions() {}

    static PriceQuestion harbour(int quantity) {
        return sized(quantity, Size.mm(300, 200), Area.mm2(306 * 206));
    }

    static PriceQuestion sized(int quantity, Size finished, Area sticker) {
        return new PriceQuestion(
                quantity,
                finished,
                48,
                Money.of("1.14", "EUR"),
                sticker,
                Minutes.of(22),
                List.of(
                        work(Stage.PRINT, 6, 1, 2),
                        work(Stage.LAMINATE, 3, 2, 3),
                        work(Stage.SHEET_PREP, 4, 3, 0),
                        work(Stage.STICK, 2, 4, 4),
                        work(Stage.MASK, 1, 2, 0),
                        work(Stage.CUT, 5, 2, 5),
                        work(Stage.FINISH, 0, 8, 0),
                        work(Stage.PACK, 1, 3, 0),
                        work(Stage.HAND_OVER, 2, 1, 0)),
                Money.of("4.50", "EUR"),
                Money.of("4.10", "EUR"),
                false,
                Percent.ZERO,
                VatRates.STANDARD);
    }

    static StageWork work(Stage stage, double setUp, double each, int rejects) {
        return new StageWork(stage, Minutes.of(setUp), Minutes.of(each), Percent.of(rejects));
    }

    static RateSet rates() {
        return RateSet.starting(TODAY, EUR);
    }

    static PriceAnswer answer(PriceQuestion question, RateSet rates, PriceRule rule) {
        CostSheet making = CostBuilder.build(question, rates, MaterialPrices.none());
        return new PriceFinder(question, making, rates, rule, List.of()).answer();
    }
}
