package puzzleworkshop.orders.preview;

import java.time.Clock;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.OrderStore;
import puzzleworkshop.orders.events.OrderChanged;
import puzzleworkshop.runtime.VersionedCache;

/**
 * A page of the week or the bench asks for dozens of faces in one breath; they are looked up together, in one query, not
 * one by one. What is kept counts only for the version that the address names, so it can never show an order as it was.
 */
@Component
class OpenOrderCache {

    private static final Duration A_BREATH = Duration.ofSeconds(20);

    private final OrderStore store;
    private final VersionedCache<OrderState, Map<OrderId, Order>> open;

    OpenOrderCache(OrderStore store, Clock clock) {
        this.store = store;
        this.open = VersionedCache.ofMost(1, A_BREATH, clock);
    }

    Optional<Order> find(OrderId id, long version) {
        return Optional.ofNullable(open.get(OrderState.CONFIRMED, this::read).get(id))
                .filter(order -> order.version() == version)
                .or(() -> store.find(id));
    }

    private Map<OrderId, Order> read() {
        return store.open().stream().collect(Collectors.toUnmodifiableMap(Order::id, order -> order));
    }

    @EventListener(OrderChanged.class)
    @org.springframework.core.annotation.Order(Ordered.HIGHEST_PRECEDENCE)
    void forget() {
        open.forget();
    }
}
