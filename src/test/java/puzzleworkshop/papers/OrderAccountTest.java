package puzzleworkshop.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;

@DisplayNameGeneration(ReplaceUnderscores.class)
class OrderAccountTest {

    private static final Money NOTHING = Money.of("0.00", "EUR");
    private static final Money TEN = Money.of("10.00", "EUR");

    @Test
    void an_invoice_over_nothing_stands_and_no_other_is_issued_beside_it() {
        Invoice free = paper(1, Invoice.Series.INVOICE, Optional.empty(), NOTHING);
        assertThat(new OrderAccount(NOTHING, List.of(free), List.of()).standing())
                .contains(free);
    }

    @Test
    void an_invoice_that_was_taken_back_in_full_stands_no_more() {
        Invoice sold = paper(1, Invoice.Series.INVOICE, Optional.empty(), TEN);
        Invoice back = paper(2, Invoice.Series.CREDIT_NOTE, Optional.of(sold.id()), TEN);
        assertThat(new OrderAccount(TEN, List.of(sold), List.of()).standing()).contains(sold);
        assertThat(new OrderAccount(TEN, List.of(sold, back), List.of()).standing())
                .isEmpty();
    }

    private static Invoice paper(long id, Invoice.Series series, Optional<InvoiceId> corrects, Money gross) {
        LocalDate day = LocalDate.of(2026, 11, 2);
        return new Invoice(
                new InvoiceId(id),
                series,
                "2026-000" + id,
                new OrderRef(new OrderId(1), "2026-0001"),
                corrects.map(of -> new Invoice.Correction(of, "")),
                day,
                day.plusDays(14),
                new Invoice.Parties("", "", "Ida Lund"),
                new Invoice.Totals(gross, NOTHING, gross, VatMode.NONE, VatRounding.BY_TOTAL),
                List.of());
    }
}
