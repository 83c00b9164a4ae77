package puzzleworkshop.pricing;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Percent;

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
}
