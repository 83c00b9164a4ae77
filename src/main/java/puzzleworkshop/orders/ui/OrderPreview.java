package puzzleworkshop.orders.ui;

import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.orders.Order;

/** The customer's picture with its cut lines: the face of an order on every card, list and page. */
public class OrderPreview extends Still {

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

    public OrderPreview(Order order, Width width, Formatter figures) {
        super(of(order, width, figures));
    }

    /** The same within what only stands there. */
    public static Markup of(Order order, Width width, Formatter figures) {
        Markup image = Markup.of("img", "")
                .with("src", "faces/" + order.id().value() + "/" + order.version() + "/" + width.pixels() + ".jpg")
                .with(
                        "alt",
                        figures.text(
                                "orders.face",
                                order.puzzle().pieces(),
                                order.customer().name()))
                .with("loading", "lazy");
        return Markup.div("pw-face", image)
                .with("style", "aspect-ratio: " + order.puzzle().finished().aspect());
    }
}
