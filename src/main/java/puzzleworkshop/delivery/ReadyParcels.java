package puzzleworkshop.delivery;

import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.planning.WaitingToBeCollected;

/** Says to the plan what only waits for its customer. */
@Component
class ReadyParcels implements WaitingToBeCollected {

    private final ParcelStore store;

    ReadyParcels(ParcelStore store) {
        this.store = store;
    }

    @Override
    public Set<OrderId> orders() {
        return store.waiting().stream()
                .flatMap(parcel -> parcel.orderIds().stream())
                .collect(Collectors.toSet());
    }
}
