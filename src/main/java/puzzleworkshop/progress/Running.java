package puzzleworkshop.progress;

import java.time.Instant;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.workshop.Stage;

/** A clock that runs for an order at its stage. */
public record Running(OrderId order, Stage stage, Instant since, String who) {

    record At(OrderId order, Stage stage) {}

    At at() {
        return new At(order, stage);
    }
}
