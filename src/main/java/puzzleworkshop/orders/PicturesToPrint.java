package puzzleworkshop.orders;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Length;
import puzzleworkshop.printing.PrintItem;
import puzzleworkshop.printing.PrintQueue;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** What the printing room may print: approved pictures of confirmed orders whose next stage is the print. */
@Component
class PicturesToPrint implements PrintQueue {

    private final Orders orders;
    private final Workshop workshop;

    PicturesToPrint(Orders orders, Workshop workshop) {
        this.orders = orders;
        this.workshop = workshop;
    }

    @Override
    public List<PrintItem> waiting() {
        Length overhang = workshop.tradeNumbers().overhang();
        return orders.open().stream()
                .flatMap(order -> item(order, overhang).stream())
                .toList();
    }

    @Override
    public Optional<PrintItem> find(long orderId) {
        return orders.find(new OrderId(orderId))
                .flatMap(order -> item(order, workshop.tradeNumbers().overhang()));
    }

    private static Optional<PrintItem> item(Order order, Length overhang) {
        if (order.state() != OrderState.CONFIRMED
                || order.approval().isEmpty()
                || !order.next().equals(Optional.of(Stage.PRINT))) {
            return Optional.empty();
        }
        return order.picture()
                .map(framed -> new PrintItem(
                        order.id().value(),
                        order.number(),
                        order.quantity(),
                        order.puzzle().finished(),
                        overhang,
                        order.promised().or(order::wantedBy),
                        framed.picture(),
                        framed.crop()));
    }
}
