package puzzleworkshop.orders;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.OrderId;

/** Lets open screens know at once when an order has changed, whoever changed it. */
@Component
public class LiveOrders {

    private final List<Consumer<OrderId>> listeners = new CopyOnWriteArrayList<>();

    /** Listens until the returned stop is run. Listeners are called outside any transaction and must be quick. */
    public Runnable listen(Consumer<OrderId> listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }

    @EventListener
    void changed(OrderChanged event) {
        listeners.forEach(listener -> listener.accept(event.order()));
    }
}
