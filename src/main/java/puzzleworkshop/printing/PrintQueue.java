package puzzleworkshop.printing;

import java.util.List;
import java.util.Optional;

/** Which pictures wait to be printed. Kept by the orders; printing asks. */
public interface PrintQueue {

    /** Every order whose picture is approved and whose next stage is the print, earliest due first. */
    List<PrintItem> waiting();

    /** One of them; empty when it does not wait any more. */
    Optional<PrintItem> find(long orderId);
}
