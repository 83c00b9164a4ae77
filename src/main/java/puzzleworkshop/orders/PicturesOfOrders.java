package puzzleworkshop.orders;

import java.time.Instant;
import java.util.Set;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.PictureUse;

/** The picture of an order is in use, whatever became of the order. */
@Component
class PicturesOfOrders implements PictureUse {

    private final OrderStore store;

    PicturesOfOrders(OrderStore store) {
        this.store = store;
    }

    @Override
    public Set<PictureId> inUse(Set<PictureId> asked) {
        return Set.copyOf(store.holding(asked));
    }

    @Override
    public Set<PictureId> needingOriginal(Set<PictureId> asked, Instant since) {
        return Set.copyOf(store.holdingOriginal(asked, since));
    }
}
