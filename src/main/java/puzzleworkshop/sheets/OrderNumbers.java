package puzzleworkshop.sheets;

import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/** Shows an order as people know it, as far as the room that knows orders says so. */
@Component
class OrderNumbers {

    private final ObjectProvider<WaitingBlanks> orders;

    OrderNumbers(ObjectProvider<WaitingBlanks> orders) {
        this.orders = orders;
    }

    String shown(long orderId) {
        return Optional.ofNullable(orders.getIfAvailable())
                .flatMap(port -> port.numberOf(orderId))
                .orElse(Long.toString(orderId));
    }
}
