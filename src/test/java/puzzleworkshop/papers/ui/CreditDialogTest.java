package puzzleworkshop.papers.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.textfield.BigDecimalField;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.InvoiceId;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.pricing.tax.VatSum;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.ScreenTest;
import puzzleworkshop.workshop.ui.SetUpView;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class CreditDialogTest extends ScreenTest {

    private static final Percent FULL = Percent.of(20);
    private static final Percent REDUCED = Percent.of(5);

    @Autowired
    Formatter figures;

    private final List<Map<Percent, Money>> issued = new ArrayList<>();

    @Test
    void an_amount_that_cannot_be_read_is_not_taken_for_nothing_and_no_credit_note_goes_out() {
        open();
        typeUnreadable(at("up to €12.00"), "abc");
        press();
        assertThat(issued).isEmpty();
        assertThat(at("up to €12.00").isInvalid()).isTrue();
        assertThat(at("up to €12.00").getErrorMessage()).startsWith("This cannot be read as a number");
    }

    @Test
    void a_fraction_of_a_cent_and_more_than_was_invoiced_are_refused_beside_their_field() {
        open();
        at("up to €12.00").setValue(new BigDecimal("10.005"));
        press();
        assertThat(at("up to €12.00").isInvalid()).isTrue();
        at("up to €12.00").setValue(new BigDecimal("12.01"));
        press();
        assertThat(at("up to €12.00").isInvalid()).isTrue();
        assertThat(issued).isEmpty();
    }

    @Test
    void a_rate_left_empty_takes_nothing_back_at_that_rate() {
        open();
        at("up to €12.00").clear();
        press();
        assertThat(issued).containsExactly(Map.of(FULL, Money.of("0", "EUR"), REDUCED, Money.of("10.50", "EUR")));
    }

    private void open() {
        navigate(SetUpView.class);
        List<VatSum.OfRate> rest =
                List.of(rate(FULL, "10.00", "2.00", "12.00"), rate(REDUCED, "10.00", "0.50", "10.50"));
        new CreditDialog(figures, invoice(), rest, (amounts, reason) -> issued.add(amounts), () -> {}).open();
        find(TextField.class).all().stream()
                .filter(field -> "Why the invoice is corrected".equals(field.getLabel()))
                .findFirst()
                .orElseThrow()
                .setValue("one puzzle came back");
    }

    private void press() {
        test(find(Button.class).withText("Book").single()).click();
    }

    private BigDecimalField at(String helper) {
        return find(BigDecimalField.class).all().stream()
                .filter(field -> helper.equals(field.getHelperText()))
                .findFirst()
                .orElseThrow();
    }

    private static VatSum.OfRate rate(Percent rate, String net, String vat, String gross) {
        return new VatSum.OfRate(rate, Money.of(net, "EUR"), Money.of(vat, "EUR"), Money.of(gross, "EUR"));
    }

    private static Invoice invoice() {
        LocalDate day = LocalDate.of(2026, 11, 2);
        return new Invoice(
                new InvoiceId(1),
                Invoice.Series.INVOICE,
                "2026-0001",
                new OrderRef(new OrderId(1), "2026-0001"),
                Optional.empty(),
                day,
                day.plusDays(14),
                new Invoice.Parties("", "", "Ida Lund"),
                new Invoice.Totals(
                        Money.of("20.00", "EUR"),
                        Money.of("2.50", "EUR"),
                        Money.of("22.50", "EUR"),
                        VatMode.INCLUDED,
                        VatRounding.BY_TOTAL),
                List.of());
    }
}
