package puzzleworkshop.orders;

import java.time.Instant;
import java.util.Optional;
import puzzleworkshop.workshop.Stage;

/**
 * How far an order has come.
 *
 * @param next what the bench does next; present exactly while confirmed
 */
public record OrderCourse(
        OrderState state,
        Optional<Stage> next,
        Instant createdAt,
        Optional<Instant> confirmedAt,
        Optional<Instant> handedOverAt) {}
