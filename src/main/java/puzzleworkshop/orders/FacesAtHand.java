package puzzleworkshop.orders;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.OrderId;

/**
 * A page of the week or the bench asks for dozens of faces in one breath; they are looked up together, in one query, not
 * one by one. What is kept counts only for the version that the address names, so it can never show an order as it was.
 */
@Component
class FacesAtHand {

    private static final Duration A_BREATH = Duration.ofSeconds(20);

    private final OrderStore store;
    private final Clock clock;
    private Map<OrderId, Order> open = Map.of();
    private Instant read = Instant.MIN;

    FacesAtHand(OrderStore store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    Optional<Order> find(OrderId id, long version) {
        return Optional.ofNullable(open().get(id))
                .filter(order -> order.version() == version)
                .or(() -> store.find(id));
    }

    private synchronized Map<OrderId, Order> open() {
        Instant now = clock.instant();
        if (read.isBefore(now.minus(A_BREATH)) || read.isAfter(now)) {
            Map<OrderId, Order> fresh = new HashMap<>();
            store.open().forEach(order -> fresh.put(order.id(), order));
            open = Map.copyOf(fresh);
            read = now;
        }
        return open;
    }

    @EventListener(OrderChanged.class)
    synchronized void changed() {
        read = Instant.MIN;
    }
}
