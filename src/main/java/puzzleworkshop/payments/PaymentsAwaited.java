package puzzleworkshop.payments;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.Workshop;

/** Orders whose work begins only when money has come, and whether it has. */
@Service
public class PaymentsAwaited {

    private final PaymentStore store;
    private final Orders orders;
    private final Workshop workshop;
    private final Clock clock;

    PaymentsAwaited(PaymentStore store, Orders orders, Workshop workshop, Clock clock) {
        this.store = store;
        this.orders = orders;
        this.workshop = workshop;
        this.clock = clock;
    }

    /** An amount that has to come before the work, as somebody asked for it. */
    public record Asked(OrderId order, Money amount, Instant at, String who) {}

    /**
     * Lets the work of an order wait for money.
     *
     * @param amount above zero and not more than the order's price
     */
    @Transactional
    public void ask(OrderId id, Money amount, String who) {
        Order order = orders.lock(id);
        if (order.state() != OrderState.CONFIRMED) {
            throw new Refused("payments.awaited.not-open", order.number());
        }
        if (!amount.isPositive() || amount.compareTo(order.price().gross()) > 0) {
            throw new Refused("payments.awaited.range", order.price().gross());
        }
        store.ask(new Asked(id, amount, clock.instant(), who));
        orders.note(id, Sentence.of("payments.history.awaited", amount), who);
    }

    /** The work goes on without it. */
    @Transactional
    public void letGo(OrderId id, String who) {
        orders.lock(id);
        if (store.letGo(id)) {
            orders.note(id, Sentence.of("payments.history.let-go"), who);
        }
    }

    public Optional<Asked> of(OrderId id) {
        return stillToBeMade(store.asked(id).stream().toList()).stream().findFirst();
    }

    /** Whether what was asked for has come. */
    public boolean hasCome(Asked asked) {
        return unpaid(List.of(asked)).isEmpty();
    }

    /** Orders that still wait for their money, and since when. */
    public Map<OrderId, LocalDate> open() {
        Map<OrderId, LocalDate> open = new HashMap<>();
        unpaid(stillToBeMade(store.asked()))
                .forEach((order, asked) -> open.put(order, LocalDate.ofInstant(asked.at(), workshop.zone())));
        return open;
    }

    private List<Asked> stillToBeMade(List<Asked> asked) {
        Set<OrderId> open = orders.confirmed(asked.stream().map(Asked::order).toList());
        return asked.stream().filter(one -> open.contains(one.order())).toList();
    }

    private Map<OrderId, Asked> unpaid(List<Asked> all) {
        if (all.isEmpty()) {
            return Map.of();
        }
        Map<OrderId, Money> received =
                store.received(all.stream().map(Asked::order).toList());
        return all.stream()
                .filter(asked -> !Optional.ofNullable(received.get(asked.order()))
                        .map(came -> came.compareTo(asked.amount()) >= 0)
                        .orElse(false))
                .collect(Collectors.toMap(Asked::order, Function.identity()));
    }
}
