package puzzleworkshop.orders;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Sentence;
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
        return orders.open().stream().flatMap(order -> item(order, overhang).stream()).toList();
    }

    @Override
    public Optional<PrintItem> find(long orderId) {
        return orders.find(new OrderId(orderId)).flatMap(order -> item(order, workshop.tradeNumbers().overhang()));
    }

    private static Optional<PrintItem> item(Order order, Length overhang) {
        if (order.state() != OrderState.CONFIRMED || order.approval().isEmpty() || !order.next().equals(Optional.of(Stage.PRINT))) {
            return Optional.empty();
        }
        return order.picture().map(framed -> new PrintItem(
                order.id().value(), order.number(), order.quantity(), order.puzzle().finished(), overhang,
                order.promised().or(order::wantedBy), framed.picture(), framed.crop()));
    }

    @Override
    @Transactional
    public void printed(long orderId, String who) {
        orders.completeStage(new OrderId(orderId), Stage.PRINT, who);
    }

    @Override
    @Transactional
    public void spoiled(long orderId, int copy, String reason, String who) {
        OrderId id = new OrderId(orderId);
        Sentence why = Sentence.of("orders.history.print-spoiled", copy, reason);
        Order order = orders.lock(id);
        boolean passed = order.state() == OrderState.HANDED_OVER
                || order.next().map(next -> next.compareTo(Stage.PRINT) > 0).orElse(false);
        if (passed) {
            orders.sendBack(id, Stage.PRINT, why, who);
        } else {
            orders.note(id, why, who);
        }
    }
}
