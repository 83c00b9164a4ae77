package puzzleworkshop.bench;

import java.time.Instant;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.workshop.Stage;

/** A clock that runs for an order, since when and who started it. */
public record Running(OrderId order, Stage stage, Instant since, String who) {}
