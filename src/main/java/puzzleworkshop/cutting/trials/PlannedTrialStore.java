package puzzleworkshop.cutting.trials;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.cutting.jobs.CutJob.Signature;
import puzzleworkshop.measure.OrderId;

@Repository
class PlannedTrialStore {

    record Row(long id, long settingId, OrderId order, String label, Signature planned) {}

    private static final RowMapper<Row> ROW = (row, n) -> new Row(
            row.getLong("id"),
            row.getLong("setting_id"),
            new OrderId(row.getLong("order_id")),
            row.getString("label"),
            new Signature(
                    row.getString("planned_by"),
                    row.getObject("planned_at", OffsetDateTime.class).toInstant()));

    private final JdbcClient jdbc;

    PlannedTrialStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** False when the order has an open one. */
    boolean insert(long settingId, OrderId order, String label, String by, Instant at) {
        return jdbc.sql("""
                insert into cutting_planned_trial (setting_id, order_id, label, planned_by, planned_at)
                values (:setting, :order, :label, :by, :at)
                on conflict (order_id) where closed_at is null do nothing
                """)
                        .param("setting", settingId)
                        .param("order", order.value())
                        .param("label", label)
                        .param("by", by)
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    /** Oldest first. */
    List<Row> open() {
        return jdbc.sql("select * from cutting_planned_trial where closed_at is null order by id")
                .query(ROW)
                .list();
    }

    Optional<Row> openFor(OrderId order) {
        return jdbc.sql("select * from cutting_planned_trial where closed_at is null and order_id = :order")
                .param("order", order.value())
                .query(ROW)
                .optional();
    }

    List<Row> openOf(long settingId) {
        return jdbc.sql(
                        "select * from cutting_planned_trial where closed_at is null and setting_id = :setting order by id")
                .param("setting", settingId)
                .query(ROW)
                .list();
    }

    void close(long id, PlannedTrials.Closed how, Instant at) {
        jdbc.sql(
                        "update cutting_planned_trial set closed_at = :at, closed_how = :how where id = :id and closed_at is null")
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("how", how.name())
                .param("id", id)
                .update();
    }
}
