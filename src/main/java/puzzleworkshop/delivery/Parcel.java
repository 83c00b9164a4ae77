package puzzleworkshop.delivery;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;

/**
 * What goes to one customer at once, or waits to be collected.
 *
 * @param way by which it leaves, as the planning room knows it; absent only where that way is not known any more
 * @param orders in it, at least one
 * @param tracking the carrier's number; empty while there is none
 * @param postage what the carrier takes, when known
 * @param measure as it was weighed and measured; absent while only reckoned
 * @param leftAt when it was sent, or made ready to collect
 * @param arrivedAt when the customer had it
 * @param remindedAt when the customer was last reminded to collect it
 */
public record Parcel(
        ParcelId id,
        long customer,
        String customerName,
        Optional<Long> way,
        WayKind kind,
        ParcelState state,
        List<OrderRef> orders,
        String tracking,
        Optional<Money> postage,
        Optional<ParcelMeasure> measure,
        Instant packedAt,
        Optional<Instant> leftAt,
        Optional<Instant> arrivedAt,
        Optional<Instant> remindedAt) {

    public Parcel {
        orders = List.copyOf(orders);
    }

    Parcel named(String name) {
        return new Parcel(
                id,
                customer,
                name,
                way,
                kind,
                state,
                orders,
                tracking,
                postage,
                measure,
                packedAt,
                leftAt,
                arrivedAt,
                remindedAt);
    }

    public List<OrderId> orderIds() {
        return orders.stream().map(OrderRef::id).toList();
    }

    public boolean isCollected() {
        return kind == WayKind.COLLECTION;
    }
}
