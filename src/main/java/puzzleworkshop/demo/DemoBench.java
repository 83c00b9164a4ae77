package puzzleworkshop.demo;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.boards.BoardCuts;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.Stage;

/** Takes a demo order through its stages as the maker would. */
@Component
class DemoBench {

    private final Orders orders;
    private final Bench bench;
    private final BoardCuts cuts;

    DemoBench(Orders orders, Bench bench, BoardCuts cuts) {
        this.orders = orders;
        this.bench = bench;
        this.cuts = cuts;
    }

    /** @param upTo the stage that is left to do next; absent: all are done */
    void work(OrderId id, Optional<Stage> upTo) {
        Order order = orders.get(id);
        while (order.next().isPresent() && !order.next().equals(upTo)) {
            Stage stage = order.next().get();
            if (stage == Stage.CUT) {
                cuts.cut(id, Instant.EPOCH, DemoStock.MAKER);
                orders.completeStage(id, stage, DemoStock.MAKER);
            } else {
                Bench.Outcome outcome = bench.tick(BookingKey.fresh(), List.of(id), stage, DemoStock.MAKER, "");
                if (!outcome.refused().isEmpty()) {
                    throw new IllegalStateException("The demo's bench: " + outcome.refused());
                }
            }
            order = orders.get(id);
        }
    }
}
