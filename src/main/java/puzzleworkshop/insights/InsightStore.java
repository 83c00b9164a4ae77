package puzzleworkshop.insights;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
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
import puzzleworkshop.measure.OrderRef;
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
        select order_id, t.number, t.customer, t.state, t.handed_over_at, t.quantity, t.width_mm, t.height_mm, t.pieces,
            t.currency, t.laser_minutes, t.material_lost, t.minutes_lost, t.mishaps, t.version, s.net as sold
        from order_took t join order_sold s using (order_id)\
        """;

    private static final String FINISHED = """
         where handed_over_at >= :since and state in ('CONFIRMED', 'HANDED_OVER', 'CLOSED')
            and order_id not in (select order_id from order_piece_free)
        order by handed_over_at desc
        """;

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

    /** Of these ids, those that are orders. */
    List<Row> orders(Collection<OrderId> ids) {
        return jdbc.sql(ROWS + " where order_id = any(:ids) order by order_id")
                .param("ids", numbers(ids))
                .query(InsightStore::row)
                .list();
    }

    /**
     * Handed over for the first time since a moment, newest first; those that are made again now too. Pieces made for
     * nothing count with the order they belong to.
     */
    List<Row> finishedSince(Instant since) {
        return jdbc.sql(ROWS + FINISHED)
                .param("since", since.atOffset(ZoneOffset.UTC))
                .query(InsightStore::row)
                .list();
    }

    /** Orders of one piece that belong to these and are paid by nobody, by the order they belong to. */
    Map<OrderId, List<OrderId>> freePieces(Collection<OrderId> orders) {
        Map<OrderId, List<OrderId>> pieces = new HashMap<>();
        jdbc.sql("select of_order, order_id from order_piece_free where of_order = any(:orders) order by order_id")
                .param("orders", numbers(orders))
                .query(row -> {
                    pieces.computeIfAbsent(new OrderId(row.getLong("of_order")), id -> new ArrayList<>())
                            .add(new OrderId(row.getLong("order_id")));
                });
        return pieces;
    }

    /** The order whose figures bear what a piece made for nothing costs. */
    Optional<OrderRef> bornBy(OrderId piece) {
        return jdbc.sql("""
            select r.id, r.number from order_piece_free p join order_ref r on r.id = p.of_order where p.order_id = :piece
            """)
                .param("piece", piece.value())
                .query((row, n) -> new OrderRef(new OrderId(row.getLong("id")), row.getString("number")))
                .optional();
    }

    /** Clocked minutes by order and stage. */
    Map<OrderId, Map<Stage, Minutes>> clocked(Collection<OrderId> orders) {
        Map<OrderId, Map<Stage, Minutes>> clocked = new HashMap<>();
        jdbc.sql("select order_id, stage, minutes from stage_took where order_id = any(:orders)")
                .param("orders", numbers(orders))
                .query((row, n) -> clocked.computeIfAbsent(
                                new OrderId(row.getLong("order_id")), id -> new EnumMap<>(Stage.class))
                        .put(Stage.valueOf(row.getString("stage")), Minutes.of(row.getDouble("minutes"))))
                .list();
        return clocked;
    }

    /** What orders were reckoned to cost, by id. */
    Map<OrderId, EstimatedCost> reckoned(Collection<OrderId> orders) {
        Map<OrderId, EstimatedCost> reckoned = new HashMap<>();
        jdbc.sql("select order_id, kept_price::text as price from order_took where order_id = any(:orders)")
                .param("orders", numbers(orders))
                .query(row -> {
                    reckoned.put(
                            new OrderId(row.getLong("order_id")),
                            EstimatedCost.of(KeptPrice.fromJson(row.getString("price"))));
                });
        return reckoned;
    }

    /** What supplies have cost, by order and kind. */
    Map<OrderId, Map<SupplyKind, Money>> materials(Collection<OrderId> orders) {
        Map<OrderId, Map<SupplyKind, Money>> materials = new HashMap<>();
        jdbc.sql("""
            select m.order_id, m.kind, m.cost, m.currency from order_materials m
            join order_took o on o.order_id = m.order_id and o.currency = m.currency
            where m.order_id = any(:orders)
            """).param("orders", numbers(orders)).query(row -> {
            materials
                    .computeIfAbsent(new OrderId(row.getLong("order_id")), id -> new EnumMap<>(SupplyKind.class))
                    .put(
                            SupplyKind.valueOf(row.getString("kind")),
                            Money.of(row.getBigDecimal("cost"), Currency.getInstance(row.getString("currency"))));
        });
        return materials;
    }

    private static Long[] numbers(Collection<OrderId> orders) {
        return orders.stream().map(OrderId::value).toArray(Long[]::new);
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
