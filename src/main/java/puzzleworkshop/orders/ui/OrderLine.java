package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;

/** One order in a list: its picture, who and what, how far it is, its day and its price. */
class OrderLine extends Anchor {

    OrderLine(Order order, Punctuality punctuality, Formatter figures) {
        super("orders/" + order.number());
        addClassName("orders-row");
        Span who = new Span(order.customer().name());
        who.addClassName("orders-row-who");
        Span what = new Span(figures.text(
                "orders.what", order.puzzle().finished(), order.puzzle().pieces(), order.quantity()));
        what.addClassName("pw-small");
        Div words = new Div(new Span(order.number()), who, what);
        words.addClassName("orders-row-words");
        Div progress = new Div(new StateVerdict(order, punctuality, figures), new StageStrip(order));
        progress.addClassName("orders-row-progress");
        Div due = new Div(new Span(order.promised().map(figures::day).orElse("–")));
        due.addClassName("orders-row-due");
        Span price = new Span(figures.money(order.price().gross()));
        price.addClassNames("pw-number", "orders-row-price");
        add(new OrderPreview(order, OrderPreview.Width.SMALL), words, progress, due, price);
    }
}
