package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Image;
import puzzleworkshop.orders.Order;

/** The customer's picture with its cut lines: the face of an order on every card, list and page. */
public class OrderPreview extends Div {

    /** How wide the picture is fetched, in pixels; screens show it at half of that and less. */
    public enum Width {
        SMALL(240),
        MIDDLE(640),
        LARGE(1600);

        private final int pixels;

        Width(int pixels) {
            this.pixels = pixels;
        }

        public int pixels() {
            return pixels;
        }
    }

    public OrderPreview(Order order, Width width) {
        addClassName("pw-face");
        getStyle().set("aspect-ratio", String.valueOf(order.puzzle().finished().aspect()));
        Image image = new Image(
                "faces/" + order.id().value() + "/" + order.version() + "/" + width.pixels() + ".jpg",
                getTranslation(
                        "orders.face", order.puzzle().pieces(), order.customer().name()));
        image.getElement().setAttribute("loading", "lazy");
        add(image);
    }
}
