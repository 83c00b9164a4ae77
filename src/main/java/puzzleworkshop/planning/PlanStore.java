package puzzleworkshop.planning;

import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.planning.schedule.LatenessCost;

@Repository
public class PlanStore {

    private final JdbcClient jdbc;

    PlanStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Map<OrderId, LocalDate> pins() {
        Map<OrderId, LocalDate> pins = new HashMap<>();
        jdbc.sql("select order_id, day from pinned_day")
                .query((row, n) ->
                        pins.put(new OrderId(row.getLong("order_id")), row.getObject("day", LocalDate.class)))
                .list();
        return pins;
    }

    void pin(OrderId order, LocalDate day, String who, Instant at) {
        jdbc.sql("""
                insert into pinned_day (order_id, day, pinned_by, pinned_at) values (:order, :day, :who, :at)
                on conflict (order_id) do update set day = excluded.day, pinned_by = excluded.pinned_by,
                    pinned_at = excluded.pinned_at
                """)
                .param("order", order.value())
                .param("day", day)
                .param("who", who)
                .param("at", Timestamp.from(at))
                .update();
    }

    boolean unpin(OrderId order) {
        return jdbc.sql("delete from pinned_day where order_id = :order")
                        .param("order", order.value())
                        .update()
                == 1;
    }

    public void addFeed(byte[] hash, String who, Instant at) {
        jdbc.sql("update week_feed set ended_at = :at where ended_at is null")
                .param("at", Timestamp.from(at))
                .update();
        jdbc.sql("insert into week_feed (token_hash, made_by, made_at) values (:hash, :who, :at)")
                .param("hash", hash)
                .param("who", who)
                .param("at", Timestamp.from(at))
                .update();
    }

    public void endFeeds(Instant at) {
        jdbc.sql("update week_feed set ended_at = :at where ended_at is null")
                .param("at", Timestamp.from(at))
                .update();
    }

    public boolean isFeed(byte[] hash) {
        return jdbc.sql("select count(*) from week_feed where token_hash = :hash and ended_at is null")
                        .param("hash", hash)
                        .query(Integer.class)
                        .single()
                > 0;
    }

    public boolean hasFeed() {
        return jdbc.sql("select count(*) from week_feed where ended_at is null")
                        .query(Integer.class)
                        .single()
                > 0;
    }

    LatenessCost latenessCost() {
        return jdbc.sql("select at_all, per_day, growth, started, paid from lateness_cost")
                .query((row, n) -> new LatenessCost(
                        row.getDouble("at_all"),
                        row.getDouble("per_day"),
                        row.getDouble("growth"),
                        row.getDouble("started"),
                        row.getDouble("paid")))
                .single();
    }

    void update(LatenessCost cost) {
        jdbc.sql("""
                update lateness_cost set at_all = :atAll, per_day = :perDay, growth = :growth, started = :started,
                    paid = :paid
                """)
                .param("atAll", cost.atAll())
                .param("perDay", cost.perDay())
                .param("growth", cost.growth())
                .param("started", cost.started())
                .param("paid", cost.paid())
                .update();
    }
}
