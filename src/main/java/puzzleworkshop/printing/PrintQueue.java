package puzzleworkshop.printing;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.payments.PaymentsAwaited;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** What may be printed: approved pictures of confirmed orders whose next stage is the print. */
@Component
class PrintQueue {

    private final Orders orders;
    private final PaymentsAwaited payments;
    private final Workshop workshop;

    PrintQueue(Orders orders, PaymentsAwaited payments, Workshop workshop) {
        this.orders = orders;
        this.payments = payments;
        this.workshop = workshop;
    }

    /** Orders that had better not be printed yet, and why, as words that follow the order's number. */
    Map<OrderId, Sentence> heldBack() {
        Map<OrderId, Sentence> held = new HashMap<>();
        payments.open().forEach((order, since) -> held.put(order, Sentence.of("printing.waits.payment", since)));
        return held;
    }

    List<PrintItem> waiting() {
        Length overhang = workshop.tradeNumbers().overhang();
        return orders.open().stream()
                .flatMap(order -> item(order, overhang).stream())
                .toList();
    }

    Optional<PrintItem> find(OrderId id) {
        return orders.find(id)
                .flatMap(order -> item(order, workshop.tradeNumbers().overhang()));
    }

    /** Also of an order that does not wait any more: it may lie in a run that shows it still. */
    Optional<PrintItem> picture(OrderId id) {
        return orders.find(id)
                .flatMap(order -> print(order, workshop.tradeNumbers().overhang()));
    }

    private static Optional<PrintItem> item(Order order, Length overhang) {
        if (order.state() != OrderState.CONFIRMED
                || order.approval().isEmpty()
                || !order.next().equals(Optional.of(Stage.PRINT))) {
            return Optional.empty();
        }
        return print(order, overhang);
    }

    private static Optional<PrintItem> print(Order order, Length overhang) {
        return order.picture()
                .map(framed -> new PrintItem(
                        order.ref(),
                        order.quantity(),
                        order.puzzle().finished(),
                        overhang,
                        order.promised().or(order::wantedBy),
                        framed.picture(),
                        framed.crop()));
    }
}
