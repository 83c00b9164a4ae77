package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.Component;
import puzzleworkshop.orders.Order;

/** The usual cut files of an order with the setting they carry; the room that puts on record what is given out shows them. */
public interface OrderCutFiles {

    /** Setting, large, and a link for each form. */
    Component of(Order order);
}
