package puzzleworkshop.delivery;

import java.time.Clock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.springframework.stereotype.Component;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.workshop.Stage;

/**
 * What both who packs and who sends do with a parcel: lock its orders and then itself, begin one, take an order out of
 * another, write the history, tell the screens.
 */
@Component
class ParcelDesk {

    private final ParcelStore store;
    private final SendingWays ways;
    private final Addresses addresses;
    private final Orders orders;
    private final AfterCommit afterCommit;
    private final Clock clock;

    ParcelDesk(
            ParcelStore store,
            SendingWays ways,
            Addresses addresses,
            Orders orders,
            AfterCommit afterCommit,
            Clock clock) {
        this.store = store;
        this.ways = ways;
        this.addresses = addresses;
        this.orders = orders;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    Parcel get(ParcelId id) {
        return store.find(id).orElseThrow(() -> new Refused("delivery.unknown"));
    }

    /** The parcel that counts of an order. */
    Optional<Parcel> of(OrderId order) {
        return store.ofOrders(List.of(order)).stream().findFirst();
    }

    Parcel begin(Order order, String who) {
        SendingWay way = ways.orUsual(order.deliveryWay());
        return get(store.insert(order.customer().id(), Optional.of(way.way().id()), way.kind(), clock.instant(), who));
    }

    /** Out of a parcel that is still here; one that has left keeps it as what was sent before. */
    void takeFromOthers(OrderId order) {
        of(order).ifPresent(before -> {
            if (!before.state().isHere()) {
                store.noLongerCounts(order);
            } else {
                store.takeOut(before.id(), order);
                if (before.orders().size() == 1) {
                    store.delete(before.id());
                }
                tell(before.id());
            }
        });
    }

    Parcel lock(ParcelId id) {
        lockAll(get(id).orderIds());
        if (!store.lock(id)) {
            throw new Refused("delivery.unknown");
        }
        return get(id);
    }

    List<Order> lockAll(Collection<OrderId> which) {
        if (which.isEmpty()) {
            throw new Refused("delivery.pack.nothing");
        }
        Map<Long, Order> locked = new TreeMap<>();
        which.stream()
                .distinct()
                .sorted(Comparator.comparingLong(OrderId::value))
                .forEach(id -> locked.put(id.value(), orders.lock(id)));
        return new ArrayList<>(locked.values());
    }

    static void requirePacked(Order order) {
        if (!order.next().equals(Optional.of(Stage.HAND_OVER))) {
            throw new Refused(
                    "delivery.pack.not-yet",
                    order.number(),
                    order.next()
                            .map(stage -> Sentence.of(stage.textKey()))
                            .orElseGet(() -> Sentence.of(order.state().textKey())));
        }
    }

    /** @throws Refused when they do not all go the same way to the same place, so that one parcel cannot hold them */
    void requireOneWay(List<Order> which) {
        if (which.size() < 2) {
            return;
        }
        Map<OrderId, Long> chosen = new HashMap<>();
        store.ofOrders(which.stream().map(Order::id).toList()).stream()
                .filter(parcel -> parcel.state().isHere())
                .forEach(parcel ->
                        parcel.orderIds().forEach(order -> parcel.way().ifPresent(way -> chosen.put(order, way))));
        Map<OrderId, PostalAddress> to = addresses.of(which);
        Order first = which.getFirst();
        SendingWay way =
                ways.orUsual(Optional.ofNullable(chosen.get(first.id())).or(first::deliveryWay));
        for (Order order : which) {
            SendingWay own =
                    ways.orUsual(Optional.ofNullable(chosen.get(order.id())).or(order::deliveryWay));
            if (own.way().id() != way.way().id()) {
                throw new Refused("delivery.pack.other-way", order.number(), own.name(), first.number(), way.name());
            }
            if (way.kind() == WayKind.PARCEL && !Objects.equals(to.get(order.id()), to.get(first.id()))) {
                throw new Refused("delivery.pack.other-place", order.number(), first.number());
            }
        }
    }

    void note(Parcel parcel, Sentence what, String who) {
        parcel.orderIds().forEach(order -> orders.note(order, what, who));
    }

    static String numbers(List<Order> of) {
        return String.join(", ", of.stream().map(Order::number).toList());
    }

    static String numbersOf(Parcel parcel) {
        return String.join(
                ", ", parcel.orders().stream().map(order -> order.number()).toList());
    }

    void tell(ParcelId id) {
        afterCommit.tell(new ParcelChanged(id));
    }
}
