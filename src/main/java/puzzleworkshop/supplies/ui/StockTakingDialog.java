package puzzleworkshop.supplies.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.BigDecimalField;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.workshop.SignedIn;

/** Takes stock of the whole shelf: what is left empty was not counted and stays as it is. */
class StockTakingDialog extends Dialog {

    StockTakingDialog(Supplies supplies, Formatter figures, SignedIn signedIn, Runnable changed) {
        setHeaderTitle(getTranslation("supplies.take-stock"));
        setWidth("min(30rem, 96vw)");
        Map<SupplyId, BigDecimalField> fields = new LinkedHashMap<>();
        Div list = new Div(new Paragraph(getTranslation("supplies.take-stock.lead")));
        list.addClassName("pw-stack");
        for (SupplyItem item : supplies.items()) {
            BigDecimalField counted = new BigDecimalField(item.name());
            counted.setLocale(Texts.LOCALE);
            counted.setWidthFull();
            counted.setHelperText(figures.text(
                    "supplies.count.ledger-says",
                    item.stock().doubleValue(),
                    getTranslation(item.useUnit().textKey())));
            Span unit = new Span(getTranslation(item.useUnit().textKey()));
            unit.addClassName("pw-unit");
            counted.setSuffixComponent(unit);
            fields.put(item.id().orElseThrow(), counted);
            list.add(counted);
        }
        add(list);
        Button save = new Button(getTranslation("supplies.take-stock.book"), event -> {
            Map<SupplyId, BigDecimal> counted = new HashMap<>();
            fields.forEach((id, field) -> {
                if (field.getValue() != null) {
                    counted.put(id, field.getValue());
                }
            });
            if (Feedback.unlessRefused(
                    figures, "supplies.booked", () -> supplies.takeStock(counted, signedIn.name()))) {
                close();
                changed.run();
            }
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(getTranslation("supplies.cancel"), event -> close()), save);
    }
}
