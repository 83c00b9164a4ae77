package puzzleworkshop.papers.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.BigDecimalField;
import com.vaadin.flow.component.textfield.TextField;
import java.time.LocalDate;
import java.util.function.Consumer;
import puzzleworkshop.display.DayField;
import puzzleworkshop.display.Figures;
import puzzleworkshop.display.Saved;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.Money;
import puzzleworkshop.payments.Payment;

/** Asks for an amount, its day, its way and a word about it. */
class AmountDialog extends Dialog {

    /** What the amount is for. */
    enum What {
        RECEIVE,
        REFUND
    }

    /** What was typed. */
    record Entry(Money amount, Payment.Way way, LocalDate day, String note) {}

    AmountDialog(Figures figures, LocalDate today, What what, Money suggested, Consumer<Entry> book, Runnable changed) {
        String key = "papers.dialog." + what.name();
        setHeaderTitle(getTranslation(key));
        setWidth("min(24rem, 94vw)");
        BigDecimalField amount = new BigDecimalField(getTranslation("papers.dialog.amount"));
        amount.setLocale(Texts.LOCALE);
        amount.setValue(suggested.rounded().amount());
        amount.setAutofocus(true);
        Span currency = new Span(suggested.currency().getSymbol(Texts.LOCALE));
        currency.addClassName("pw-unit");
        amount.setPrefixComponent(currency);
        Select<Payment.Way> way = new Select<>();
        way.setLabel(getTranslation("papers.dialog.way"));
        way.setItems(Payment.Way.values());
        way.setItemLabelGenerator(item -> getTranslation(item.textKey()));
        way.setValue(Payment.Way.TRANSFER);
        DayField day = new DayField(getTranslation("papers.dialog.day"));
        day.setValue(today);
        TextField note = new TextField(getTranslation("papers.dialog.note"));
        Div fields = new Div(amount, way, day, note);
        fields.addClassName("pw-stack");
        add(fields);
        Button save = new Button(getTranslation("papers.dialog.book"), event -> {
            boolean positive = amount.getValue() != null && amount.getValue().signum() > 0;
            amount.setErrorMessage(
                    getTranslation(amount.getValue() == null ? "papers.dialog.amount-missing" : "payments.positive"));
            amount.setInvalid(!positive);
            if (day.getValue() == null) {
                day.refuse();
            }
            if (positive
                    && day.getValue() != null
                    && Saved.unlessRefused(
                            figures,
                            key + ".done",
                            () -> book.accept(new Entry(
                                    Money.of(amount.getValue(), suggested.currency()),
                                    way.getValue(),
                                    day.getValue(),
                                    note.getValue())))) {
                close();
                changed.run();
            }
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(getTranslation("papers.dialog.cancel"), event -> close()), save);
    }
}
