package puzzleworkshop.delivery;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** Makes orders that are packed and wait to be handed over. */
public final class PackedOrders {

    private final BeanFactory beans;
    private final BenchOrders bench;

    public PackedOrders(BeanFactory beans) {
        this.beans = beans;
        this.bench = new BenchOrders(beans, true);
    }

    /** So many of one customer, leaving by the way with this name. */
    public List<Order> of(String customer, String way, int count) {
        List<OrderId> ids = new ArrayList<>();
        LocalDate promised = beans.getBean(Workshop.class).today().plusDays(20);
        JdbcClient jdbc = beans.getBean(JdbcClient.class);
        for (int i = 0; i < count; i++) {
            Order order = bench.confirmed(customer, promised, 10);
            ids.add(order.id());
            jdbc.sql("update customer_order set delivery_way = :way, customer_id = :customer where id = :id")
                    .param("way", way(way).id())
                    .param("customer", customerOf(ids.getFirst()))
                    .param("id", order.id().value())
                    .update();
            bench.bringTo(order.id(), Stage.HAND_OVER);
        }
        return beans.getBean(Orders.class).all(ids);
    }

    public Order one(String customer, String way) {
        return of(customer, way, 1).getFirst();
    }

    public DeliveryWay way(String name) {
        return beans.getBean(WorkingTimes.class).ways().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private long customerOf(OrderId id) {
        return beans.getBean(Orders.class).get(id).customer().id();
    }
}
