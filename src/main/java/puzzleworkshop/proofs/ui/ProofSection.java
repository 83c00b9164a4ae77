package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.Component;
import java.util.Optional;
import puzzleworkshop.orders.Order;

/** What another room shows on the customer's own page; beans of this type stand below the order's progress. */
public interface ProofSection {

    /**
     * The way back in: whoever answers on the page enters by the link again, so that one withdrawn or expired meanwhile
     * lets nobody in.
     */
    interface Door {

        /** @throws puzzleworkshop.measure.Refused when the link is closed */
        Order enter();
    }

    /**
     * @param order as it stands now
     * @param door to be passed before anything is written
     * @param changed shows the page again
     * @return empty when there is nothing to show
     */
    Optional<Component> show(Order order, Door door, Runnable changed);
}
