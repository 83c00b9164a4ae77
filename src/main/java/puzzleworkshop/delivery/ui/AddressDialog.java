package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;

/** Looks an order's address through and keeps it. */
class AddressDialog extends Dialog {

    AddressDialog(Order order, Addresses addresses, Formatter figures, String who, Runnable again) {
        setHeaderTitle(getTranslation("delivery.address.title", order.number()));
        AddressForm form = new AddressForm(addresses.proposed(order), figures);
        Checkbox only = new Checkbox(getTranslation("delivery.address.only"));
        Div parts = new Div(form, only);
        parts.addClassName("pw-stack");
        add(parts);
        Button keep = new Button(getTranslation("workshop.save"), e -> {
            if (form.isRight()
                    && Feedback.unlessRefused(
                            figures,
                            "delivery.address.kept",
                            () -> addresses.keep(order.id(), form.address(), only.getValue(), who))) {
                close();
                again.run();
            }
        });
        keep.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(getTranslation("planning.close"), e -> close()), keep);
        setWidth("min(40rem, 95vw)");
    }
}
