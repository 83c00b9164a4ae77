package puzzleworkshop.delivery.boxes;

import java.sql.Timestamp;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;

@Repository
class BoxStore {

    private final JdbcClient jdbc;

    BoxStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Those of the supplies whose inside is known. */
    List<Box> among(Collection<SupplyItem> items) {
        Map<Long, SupplyItem> byId = new HashMap<>();
        items.forEach(item -> byId.put(item.id().orElseThrow().value(), item));
        return jdbc
                .sql("select * from box_size order by item_id")
                .query((row, n) -> {
                    SupplyItem item = byId.get(row.getLong("item_id"));
                    return item == null
                            ? null
                            : new Box(
                                    item,
                                    Length.mm(row.getDouble("long_mm")),
                                    Length.mm(row.getDouble("middle_mm")),
                                    Length.mm(row.getDouble("short_mm")),
                                    Length.mm(row.getDouble("wall_mm")),
                                    row.getDouble("empty_g"),
                                    Optional.ofNullable(row.getObject("factor", Double.class)));
                })
                .list()
                .stream()
                .filter(Objects::nonNull)
                .toList();
    }

    void save(Box box) {
        jdbc.sql("""
            insert into box_size (item_id, long_mm, middle_mm, short_mm, wall_mm, empty_g)
            values (:id, :long, :middle, :short, :wall, :empty)
            on conflict (item_id) do update set long_mm = excluded.long_mm, middle_mm = excluded.middle_mm,
                short_mm = excluded.short_mm, wall_mm = excluded.wall_mm, empty_g = excluded.empty_g
            """)
                .param("id", box.item().id().orElseThrow().value())
                .param("long", box.longest().mm())
                .param("middle", box.middle().mm())
                .param("short", box.shortest().mm())
                .param("wall", box.wall().mm())
                .param("empty", box.emptyGrams())
                .update();
    }

    void measured(SupplyId box, double factor, String of, String who, Instant at) {
        jdbc.sql("""
            update box_size set factor = :factor, measured_at = :at, measured_by = :who, measured_of = :of
            where item_id = :id
            """)
                .param("factor", factor)
                .param("at", Timestamp.from(at))
                .param("who", who)
                .param("of", of)
                .param("id", box.value())
                .update();
    }

    Map<OrderId, SupplyId> chosen(Collection<OrderId> orders) {
        Map<OrderId, SupplyId> chosen = new HashMap<>();
        jdbc.sql("select order_id, item_id from order_box where order_id = any (:ids)")
                .param("ids", orders.stream().map(OrderId::value).toArray(Long[]::new))
                .query((row, n) ->
                        chosen.put(new OrderId(row.getLong("order_id")), new SupplyId(row.getLong("item_id"))))
                .list();
        return chosen;
    }

    void choose(OrderId order, Optional<SupplyId> box) {
        jdbc.sql("delete from order_box where order_id = :id")
                .param("id", order.value())
                .update();
        box.ifPresent(item -> jdbc.sql("insert into order_box (order_id, item_id) values (:id, :item)")
                .param("id", order.value())
                .param("item", item.value())
                .update());
    }
}
