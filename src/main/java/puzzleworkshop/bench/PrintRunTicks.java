package puzzleworkshop.bench;

import java.util.Optional;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderId;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.printing.PrintTold;
import puzzleworkshop.workshop.Stage;

/** The print is ticked by the print run it came from; a print found spoiled later is booked as something gone wrong. */
@Component
class PrintRunTicks implements PrintTold {

    private static final String DEVICE = "print run";

    private final StageTransitions work;
    private final Orders orders;

    PrintRunTicks(StageTransitions work, Orders orders) {
        this.work = work;
        this.orders = orders;
    }

    @Override
    @Transactional
    public void printed(long orderId, String who) {
        work.tick(new OrderId(orderId), Stage.PRINT, who, DEVICE);
    }

    @Override
    @Transactional
    public void spoiled(long orderId, int copy, String reason, String who) {
        OrderId id = new OrderId(orderId);
        Order order = orders.lock(id);
        if (order.next().filter(next -> next.compareTo(Stage.PRINT) > 0).isPresent()) {
            work.wentWrong(
                    id, new Rework.Report(Rework.What.PRINT_FAULT, Stage.PRINT, reason, false, Optional.empty()), who);
        }
    }
}
