package puzzleworkshop.orders;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import puzzleworkshop.supplies.OrderNumbers;

/** Tells the ledger of supplies for which orders its lines were. */
@Component
class NumbersOfOrders implements OrderNumbers {

    private final JdbcClient jdbc;

    NumbersOfOrders(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Map<Long, String> of(Collection<Long> orderIds) {
        Map<Long, String> numbers = new HashMap<>();
        if (!orderIds.isEmpty()) {
            jdbc.sql("select id, number from customer_order where id in (:ids)")
                    .param("ids", orderIds)
                    .query(row -> {
                        numbers.put(row.getLong("id"), row.getString("number"));
                    });
        }
        return numbers;
    }
}
