package puzzleworkshop.bench;

import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.printing.PrintSpoiled;
import puzzleworkshop.printing.RunPrinted;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.workshop.Stage;

/** The print is ticked by the print run it came from; a print found spoiled later is booked as something gone wrong. */
@Component
class PrintRunTicks {

    static final String DEVICE = "print run";

    private final StageTransitions work;
    private final Orders orders;

    PrintRunTicks(StageTransitions work, Orders orders) {
        this.work = work;
        this.orders = orders;
    }

    @EventListener
    @Transactional
    public void printed(RunPrinted run) {
        run.complete().forEach(order -> work.tickPrinted(order, run.who(), DEVICE));
    }

    @EventListener
    @Transactional
    public void spoiled(PrintSpoiled print) {
        OrderId id = print.order();
        Order order = orders.lock(id);
        if (order.next().filter(next -> next.compareTo(Stage.PRINT) > 0).isPresent()) {
            work.wentWrong(
                    id,
                    new Rework.Report(
                            Rework.What.PRINT_FAULT, Stage.PRINT, print.reason(), Rework.Board.KEPT, Optional.empty()),
                    print.who());
        }
    }
}
