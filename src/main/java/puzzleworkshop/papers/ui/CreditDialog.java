package puzzleworkshop.papers.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.tax.VatSum;

/** Asks what of an invoice is taken back, for each tax rate on it, and why. */
class CreditDialog extends Dialog {

    /** Issues the credit note. */
    interface Issue {
        void credit(Map<Percent, Money> amounts, String reason);
    }

    private final Map<Percent, AmountField> amounts = new LinkedHashMap<>();

    /** @param rest what of the invoice was not yet credited, by rate */
    CreditDialog(Formatter figures, Invoice invoice, List<VatSum.OfRate> rest, Issue issue, Runnable changed) {
        setHeaderTitle(figures.text("papers.dialog.CREDIT"));
        setWidth("min(24rem, 94vw)");
        Div fields = new Div(new Paragraph(figures.text("papers.dialog.credit.lead", invoice.number())));
        fields.addClassName("pw-stack");
        for (VatSum.OfRate left : rest) {
            if (left.gross().isPositive()) {
                String label = invoice.totals().mode() == VatMode.NONE
                        ? figures.text("papers.dialog.amount")
                        : figures.text("papers.dialog.amount-at-rate", left.rate());
                AmountField amount = new AmountField(
                                label,
                                BigDecimal.ZERO,
                                left.gross().rounded().amount(),
                                invoice.currency().getDefaultFractionDigits())
                        .signed(invoice.currency())
                        .saying(Sentence.of("papers.credit.range", left.gross(), left.rate()), figures);
                amount.setValue(left.gross().rounded().amount());
                amount.setHelperText(figures.text("papers.dialog.up-to", left.gross()));
                amounts.put(left.rate(), amount);
                fields.add(amount);
            }
        }
        TextField reason = new TextField(figures.text("papers.dialog.reason"));
        fields.add(reason);
        add(fields);
        BookButton save = new BookButton(figures.text("papers.dialog.book"), () -> {
            Map<Percent, Money> typed = new LinkedHashMap<>();
            boolean fits = true;
            for (VatSum.OfRate left : rest) {
                AmountField field = amounts.get(left.rate());
                if (field != null && field.isFit()) {
                    BigDecimal value = field.getValue() == null ? BigDecimal.ZERO : field.getValue();
                    typed.put(left.rate(), Money.of(value, invoice.currency()));
                } else {
                    fits &= field == null;
                }
            }
            reason.setErrorMessage(figures.text("papers.credit.reason"));
            reason.setInvalid(reason.getValue().isBlank());
            boolean done = fits
                    && !reason.isInvalid()
                    && Feedback.unlessRefused(
                            figures, "papers.dialog.CREDIT.done", () -> issue.credit(typed, reason.getValue()));
            if (done) {
                close();
                changed.run();
            }
            return done;
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(figures.text("papers.dialog.cancel"), event -> close()), save);
    }
}
