package puzzleworkshop.supplies.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import java.util.Optional;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.supplies.StockCounts;
import puzzleworkshop.supplies.StockCounts.Count;
import puzzleworkshop.supplies.Supplier;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.workshop.SignedIn;

/** Books one movement of one supply. Use for an order is booked at the bench and by the print run. */
class MovementDialog extends Dialog {

    /** What a person books here. */
    enum What {
        BOUGHT("supplies.movement.BOUGHT"),
        SPOILED("supplies.movement.SPOILED"),
        COUNTED("supplies.movement.COUNTED"),
        SENT_BACK("supplies.movement.SENT_BACK");

        private final String textKey;

        What(String textKey) {
            this.textKey = textKey;
        }

        String textKey() {
            return textKey;
        }

        /** Whether it says what something cost. */
        boolean isMoney() {
            return this == BOUGHT;
        }
    }

    private final transient SupplyItem item;
    private final What what;
    private final transient Supplies supplies;
    private final transient SignedIn signedIn;
    private final transient BookingKey key;
    private final transient StockCounts counts;
    private final int seen;
    private final AmountField quantity;
    private final AmountField paid;
    private final ComboBox<String> supplier = new ComboBox<>();
    private final TextField reason = new TextField();

    MovementDialog(
            SupplyItem item,
            What what,
            Supplies supplies,
            StockCounts counts,
            Formatter figures,
            SignedIn signedIn,
            Runnable changed) {
        this.counts = counts;
        this.item = item;
        this.what = what;
        this.supplies = supplies;
        this.signedIn = signedIn;
        quantity = new AmountField(
                getTranslation(what == What.BOUGHT ? "supplies.how-many" : "supplies.how-much"),
                SupplyDialog.QUANTITY_DIGITS);
        paid = AmountField.money(
                        getTranslation("supplies.paid"), item.unitCost().currency())
                .signed(item.unitCost().currency());
        SupplyId id = item.id().orElseThrow();
        this.seen = supplies.countMovements(id);
        this.key = BookingKey.seen("supply", id.value(), what, seen);
        setHeaderTitle(getTranslation(what.textKey()) + ": " + item.name());
        setWidth("min(24rem, 94vw)");
        Div fields = new Div(quantity());
        fields.addClassName("pw-stack");
        switch (what) {
            case BOUGHT -> fields.add(paid(), supplier());
            case SPOILED, SENT_BACK -> fields.add(reason());
            case COUNTED ->
                fields.add(new Paragraph(figures.text(
                        "supplies.count.ledger-says",
                        supplies.find(id).orElse(item).stock().doubleValue(),
                        getTranslation(item.useUnit().textKey()))));
        }
        add(fields);
        BookButton save = new BookButton(getTranslation("supplies.book"), () -> {
            boolean booked = isComplete() && Feedback.unlessRefused(figures, "supplies.booked", this::book);
            if (booked) {
                close();
                changed.run();
            }
            return booked;
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(getTranslation("supplies.cancel"), event -> close()), save);
    }

    private AmountField quantity() {
        quantity.setAutofocus(true);
        return quantity.in(
                what == What.BOUGHT
                        ? item.purchaseUnit()
                        : getTranslation(item.useUnit().textKey()));
    }

    private AmountField paid() {
        paid.setHelperText(getTranslation("supplies.paid.help"));
        return paid;
    }

    private ComboBox<String> supplier() {
        supplier.setLabel(getTranslation("supplies.supplier"));
        supplier.setItems(supplies.suppliers().stream().map(Supplier::name).toList());
        supplier.setAllowCustomValue(true);
        supplier.addCustomValueSetListener(event -> supplier.setValue(event.getDetail()));
        return supplier;
    }

    private TextField reason() {
        reason.setLabel(getTranslation("supplies.reason"));
        return reason;
    }

    private boolean isComplete() {
        boolean readable = quantity.isFilled() & (what != What.BOUGHT || paid.isFilled());
        boolean reasoned = what == What.SPOILED || what == What.SENT_BACK;
        reason.setErrorMessage(getTranslation("supplies.reason-missing"));
        reason.setInvalid(reasoned && reason.getValue().isBlank());
        return readable && !reason.isInvalid();
    }

    private void book() {
        SupplyId id = item.id().orElseThrow();
        BigDecimal many = quantity.getValue();
        switch (what) {
            case BOUGHT ->
                supplies.buy(
                        key,
                        id,
                        many,
                        Money.of(paid.getValue(), item.unitCost().currency()),
                        supplier.getValue() == null ? "" : supplier.getValue(),
                        signedIn.name());
            case SPOILED -> supplies.spoil(key, id, many, Optional.empty(), reason.getValue(), signedIn.name());
            case SENT_BACK -> supplies.sendBack(key, id, many, reason.getValue(), signedIn.name());
            case COUNTED -> {
                Count count = new Count(id, seen, many);
                counts.count(count.key(), count, signedIn.name());
            }
        }
    }
}
