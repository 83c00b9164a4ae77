package puzzleworkshop.insights;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Currency;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.workshop.Stage;

/** Reads the views that migrations made for reports. */
@Repository
class InsightStore {

    /** One order as the view has it. */
    record Row(
            OrderId id,
            String number,
            String customer,
            OrderState state,
            Optional<Instant> finished,
            int quantity,
            Size size,
            int pieces,
            Optional<Minutes> laser,
            Money materialLost,
            Minutes handsLost,
            int mishaps,
            long version,
            Money sold) {}

    /** Without the price, a page of JSON; see {@link EstimatedPrices}. */
    private static final String ROWS = """
            select order_id, number, customer, state, handed_over_at, quantity, width_mm, height_mm, pieces, currency,
                laser_minutes, material_lost, minutes_lost, mishaps, version,
                (select s.net from order_sold s where s.order_id = order_took.order_id) as sold
            from order_took""";

    private final JdbcClient jdbc;

    InsightStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Row> order(OrderId id) {
        return jdbc.sql(ROWS + " where order_id = :id")
                .param("id", id.value())
                .query(InsightStore::row)
                .optional();
    }

    /** Handed over since a moment, newest first. */
    List<Row> finishedSince(Instant since) {
        return jdbc.sql(ROWS + """
                 where handed_over_at >= :since and state in ('HANDED_OVER', 'CLOSED') order by handed_over_at desc
                """)
                .param("since", since.atOffset(ZoneOffset.UTC))
                .query(InsightStore::row)
                .list();
    }

    /** Clocked minutes by order and stage, of one order or of all that were handed over since a moment. */
    Map<Long, Map<Stage, Minutes>> clocked(Optional<OrderId> order, Instant since) {
        Map<Long, Map<Stage, Minutes>> clocked = new HashMap<>();
        jdbc.sql("""
                select s.* from stage_took s join order_took o on o.order_id = s.order_id
                where s.order_id = :order or (:order = 0 and o.handed_over_at >= :since)
                """)
                .param("order", order.map(OrderId::value).orElse(0L))
                .param("since", since.atOffset(ZoneOffset.UTC))
                .query((row, n) -> clocked.computeIfAbsent(row.getLong("order_id"), id -> new EnumMap<>(Stage.class))
                        .put(Stage.valueOf(row.getString("stage")), Minutes.of(row.getDouble("minutes"))))
                .list();
        return clocked;
    }

    /** What orders were reckoned to cost, by id. */
    Map<Long, EstimatedCost> reckoned(Collection<Long> orders) {
        Map<Long, EstimatedCost> reckoned = new HashMap<>();
        jdbc.sql("select order_id, kept_price::text as price from order_took where order_id in (:ids)")
                .param("ids", orders)
                .query(row -> {
                    reckoned.put(row.getLong("order_id"), EstimatedCost.of(KeptPrice.fromJson(row.getString("price"))));
                });
        return reckoned;
    }

    /** What supplies have cost, by order and kind, of one order or of all that were handed over since a moment. */
    Map<Long, Map<SupplyKind, Money>> materials(Optional<OrderId> order, Instant since) {
        Map<Long, Map<SupplyKind, Money>> materials = new HashMap<>();
        String which = order.isPresent() ? "m.order_id = :order" : "o.handed_over_at >= :since";
        jdbc.sql(
                        "select m.* from order_materials m join order_took o on o.order_id = m.order_id and o.currency = m.currency where "
                                + which)
                .param("order", order.map(OrderId::value).orElse(0L))
                .param("since", since.atOffset(ZoneOffset.UTC))
                .query(row -> {
                    materials
                            .computeIfAbsent(row.getLong("order_id"), id -> new EnumMap<>(SupplyKind.class))
                            .put(
                                    SupplyKind.valueOf(row.getString("kind")),
                                    Money.of(
                                            row.getBigDecimal("cost"),
                                            Currency.getInstance(row.getString("currency"))));
                });
        return materials;
    }

    private static Row row(ResultSet row, int n) throws SQLException {
        Currency currency = Currency.getInstance(row.getString("currency"));
        double laser = row.getDouble("laser_minutes");
        Optional<Minutes> measured = row.wasNull() ? Optional.empty() : Optional.of(Minutes.of(laser));
        double width = row.getDouble("width_mm");
        double height = row.getDouble("height_mm");
        return new Row(
                new OrderId(row.getLong("order_id")),
                row.getString("number"),
                row.getString("customer"),
                OrderState.valueOf(row.getString("state")),
                Optional.ofNullable(row.getTimestamp("handed_over_at")).map(Timestamp::toInstant),
                row.getInt("quantity"),
                Size.mm(Math.max(width, height), Math.min(width, height)),
                row.getInt("pieces"),
                measured,
                Money.of(row.getBigDecimal("material_lost"), currency),
                Minutes.of(row.getDouble("minutes_lost")),
                row.getInt("mishaps"),
                row.getLong("version"),
                Money.of(row.getBigDecimal("sold"), currency).rounded());
    }
}
