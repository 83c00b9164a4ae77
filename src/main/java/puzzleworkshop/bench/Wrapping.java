package puzzleworkshop.bench;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.orders.Order;
import puzzleworkshop.supplies.SupplyId;

/** Which boxes and bags an order is packed in; asked when packing is ticked. The room that chooses boxes answers. */
public interface Wrapping {

    /** What leaves the shelf, in use units; empty when no box is chosen for it, then the usual ones do. */
    Optional<Map<SupplyId, BigDecimal>> of(Order order);
}
