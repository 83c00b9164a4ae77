package puzzleworkshop.supplies.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.supplies.StockCounts;
import puzzleworkshop.supplies.StockCounts.Count;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.workshop.SignedIn;

/** Takes stock of the whole shelf: what is left empty was not counted and stays as it is. */
class StockTakingDialog extends Dialog {

    private final transient Map<SupplyId, AmountField> fields = new LinkedHashMap<>();
    private final transient Map<SupplyId, Integer> seen;

    StockTakingDialog(Supplies supplies, StockCounts counts, Formatter figures, SignedIn signedIn, Runnable changed) {
        setHeaderTitle(getTranslation("supplies.take-stock"));
        setWidth("min(30rem, 96vw)");
        seen = counts.seen();
        Div list = new Div(new Paragraph(getTranslation("supplies.take-stock.lead")));
        list.addClassName("pw-stack");
        for (SupplyItem item : supplies.items()) {
            String unit = getTranslation(item.useUnit().textKey());
            AmountField counted = new AmountField(item.name(), SupplyDialog.QUANTITY_DIGITS).in(unit);
            counted.setWidthFull();
            counted.setHelperText(
                    figures.text("supplies.count.ledger-says", item.stock().doubleValue(), unit));
            fields.put(item.id().orElseThrow(), counted);
            list.add(counted);
        }
        add(list);
        BookingKey key = BookingKey.fresh();
        BookButton save = new BookButton(getTranslation("supplies.take-stock.book"), () -> {
            boolean booked = Feedback.unlessRefused(
                    figures, "supplies.booked", () -> counts.take(key, counted(), signedIn.name()));
            if (booked) {
                close();
                changed.run();
            }
            return booked;
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(getTranslation("supplies.cancel"), event -> close()), save);
    }

    private List<Count> counted() {
        List<Count> counted = new ArrayList<>();
        fields.forEach((id, field) ->
                field.typed().ifPresent(many -> counted.add(new Count(id, seen.getOrDefault(id, 0), many))));
        return counted;
    }
}
