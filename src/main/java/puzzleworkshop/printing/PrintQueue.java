package puzzleworkshop.printing;

import java.util.List;
import java.util.Optional;

/** Which pictures wait to be printed. Kept by the orders; printing asks and tells. */
public interface PrintQueue {

    /** Every order whose picture is approved and whose next stage is the print, earliest due first. */
    List<PrintItem> waiting();

    /** One of them; empty when it does not wait any more. */
    Optional<PrintItem> find(long orderId);

    /** All prints of an order are made: the order goes on to the next stage. */
    void printed(long orderId, String who);

    /** A print of an order was spoiled: the order goes back to the print if it had passed it. */
    void spoiled(long orderId, int copy, String reason, String who);
}
