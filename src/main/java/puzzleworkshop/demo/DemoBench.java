package puzzleworkshop.demo;

import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderId;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.Stage;

/** Takes a demo order through its stages as the maker would. */
@Component
class DemoBench {

    private final Orders orders;
    private final SheetRack rack;

    DemoBench(Orders orders, SheetRack rack) {
        this.orders = orders;
        this.rack = rack;
    }

    /** @param upTo the stage that is left to do next; absent: all are done */
    void work(OrderId id, Optional<Stage> upTo) {
        Order order = orders.get(id);
        while (order.next().isPresent() && !order.next().equals(upTo)) {
            Stage stage = order.next().get();
            if (stage == Stage.CUT) {
                rack.cut(id.value(), DemoStock.MAKER);
            }
            order = orders.completeStage(id, stage, DemoStock.MAKER);
        }
    }
}
