package puzzleworkshop.papers;

import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.events.OrderHandedOver;
import puzzleworkshop.payments.Payments;

/** What an order still owes, and what follows from it: closed when nothing is open, open again when something is. */
@Component
class OrderAccounts {

    private final PaperStore store;
    private final Payments payments;
    private final Orders orders;

    OrderAccounts(PaperStore store, Payments payments, Orders orders) {
        this.store = store;
        this.payments = payments;
        this.orders = orders;
    }

    /** Papers, payments and what is open for one order. */
    OrderAccount of(OrderId order) {
        return of(orders.get(order));
    }

    OrderAccount of(Order which) {
        Money agreed = which.price().gross().rounded();
        return new OrderAccount(
                which.state() == OrderState.CANCELLED ? Money.zero(agreed.currency()) : agreed,
                store.ofOrder(which.id()),
                payments.of(which.id()));
    }

    /** Closes an order that nothing is open of any more, opens one again that has something open once more. */
    void openOrClose(Order order, String who) {
        if (order.state() == OrderState.CLOSED && !of(order).open().isZero()) {
            orders.reopen(order.id(), who);
        } else {
            closeWhenPaid(order, who);
        }
    }

    /** Paid before it left: nothing is open any more, and nobody has to come back to close it. */
    @EventListener
    @Transactional
    void handedOver(OrderHandedOver event) {
        closeWhenPaid(orders.lock(event.order()), event.who());
    }

    /** Money over the counter without an invoice closes an order just as well; too much of it does not. */
    private void closeWhenPaid(Order order, String who) {
        if (order.state() == OrderState.HANDED_OVER && of(order).open().isZero()) {
            orders.close(order.id(), who);
        }
    }
}
