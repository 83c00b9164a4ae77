package puzzleworkshop.papers;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.OrderId;
import puzzleworkshop.planning.MoneyReceived;

/** Tells the plan what has come for orders that are worked on only after a payment. */
@Component
class MoneyForPlan implements MoneyReceived {

    private final Invoices invoices;

    MoneyForPlan(Invoices invoices) {
        this.invoices = invoices;
    }

    @Override
    public Map<OrderId, Money> of(Collection<OrderId> orders) {
        Map<OrderId, Money> received = new HashMap<>();
        orders.forEach(order -> received.put(order, invoices.account(order).received()));
        return received;
    }
}
