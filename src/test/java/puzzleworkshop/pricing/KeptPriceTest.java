package puzzleworkshop.pricing;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.pricing.rates.PriceRule;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.pricing.tax.VatRates;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class KeptPriceTest {

    @Test
    void a_price_reads_back_as_it_was_worked_out() {
        PriceQuestion question = Questions.harbour(25).withDiscount(Percent.of(40));
        PriceRule rule = PriceRule.starting(Questions.EUR).withVat(VatMode.INCLUDED, VatRounding.BY_LINE);
        KeptPrice kept = new KeptPrice(question, Questions.answer(question, Questions.rates(), rule));
        KeptPrice read = KeptPrice.fromJson(kept.toJson());
        assertThat(read.toJson()).isEqualTo(kept.toJson());
        assertThat(read.question()).isEqualTo(question);
        assertThat(read.answer().toPay()).isEqualTo(kept.answer().toPay());
    }

    @Test
    void a_price_kept_before_lines_had_rates_of_their_own_carries_its_one_rate() {
        PriceQuestion question = Questions.harbour(2);
        PriceRule rule = PriceRule.starting(Questions.EUR).withVat(VatMode.INCLUDED, VatRounding.BY_TOTAL);
        String json = new KeptPrice(question, Questions.answer(question, Questions.rates(), rule)).toJson();
        String older = json.replaceAll(",\"vat\":\\{\"puzzles\":\"STANDARD\",\"shipping\":\"STANDARD\"}", "")
                .replaceAll("\"(puzzles|shipping)Vat\":\\{[^}]*},", "");
        assertThat(older).hasSizeLessThan(json.length() - 100);
        KeptPrice read = KeptPrice.fromJson(older);
        assertThat(read.question().vat()).isEqualTo(VatRates.STANDARD);
        assertThat(read.answer().puzzlesVat()).isEqualTo(Percent.of(20));
        assertThat(read.answer().shippingVat()).isEqualTo(Percent.of(20));
    }
}
