package puzzleworkshop.demo;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.Stage;

/** Takes a demo order through its stages as the maker would. */
@Component
class DemoBench {

    private final Orders orders;
    private final Bench bench;
    private final SheetRack rack;

    DemoBench(Orders orders, Bench bench, SheetRack rack) {
        this.orders = orders;
        this.bench = bench;
        this.rack = rack;
    }

    /** @param upTo the stage that is left to do next; absent: all are done */
    void work(OrderId id, Optional<Stage> upTo) {
        Order order = orders.get(id);
        while (order.next().isPresent() && !order.next().equals(upTo)) {
            Stage stage = order.next().get();
            if (stage == Stage.CUT) {
                rack.cut(id.value(), DemoStock.MAKER);
                orders.completeStage(id, stage, DemoStock.MAKER);
            } else {
                Bench.Outcome outcome = bench.tick(List.of(id), stage, DemoStock.MAKER, "");
                if (!outcome.refused().isEmpty()) {
                    throw new IllegalStateException("The demo's bench: " + outcome.refused());
                }
            }
            order = orders.get(id);
        }
    }
}
