package puzzleworkshop.orders.ui;

import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Component;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.ui.SetupStep;

@Component
class OrderSetupStep implements SetupStep {

    private final Orders orders;

    OrderSetupStep(Orders orders) {
        this.orders = orders;
    }

    @Override
    public int place() {
        return 50;
    }

    @Override
    public String key() {
        return "orders.first";
    }

    @Override
    public String path() {
        return "orders/new";
    }

    @Override
    public boolean done() {
        return orders.count(new OrderFilter("", Set.of(), Optional.empty())) > 0;
    }
}
