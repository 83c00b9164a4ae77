package puzzleworkshop.orders.ui;

import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.orders.Order;

/** One order in a list: its picture, who and what, how far it is, its day and its price. */
class OrderLine extends Still {

    OrderLine(Order order, Punctuality punctuality, Formatter figures) {
        super(Markup.of(
                        "a",
                        "orders-row",
                        OrderPreview.of(order, OrderPreview.Width.SMALL, figures),
                        Markup.div(
                                "orders-row-words",
                                Markup.span(order.number()),
                                Markup.span("orders-row-who", order.customer().name()),
                                Markup.span(
                                        "pw-small",
                                        figures.text(
                                                "orders.what",
                                                order.puzzle().finished(),
                                                order.puzzle().pieces(),
                                                order.quantity()))),
                        Markup.div(
                                "orders-row-progress",
                                StateVerdict.of(order, punctuality, figures),
                                StageStrip.of(order, figures)),
                        Markup.div(
                                "orders-row-due",
                                Markup.span(order.promised().map(figures::day).orElse("–"))),
                        Markup.span(
                                "pw-number orders-row-price",
                                figures.money(order.price().gross())))
                .with("href", "orders/" + order.number()));
    }
}
