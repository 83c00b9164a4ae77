package puzzleworkshop.delivery;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.Collection;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.Customers;

@Repository
class ParcelStore {

    private final JdbcClient jdbc;
    private final Customers customers;

    ParcelStore(JdbcClient jdbc, Customers customers) {
        this.jdbc = jdbc;
        this.customers = customers;
    }

    ParcelId insert(long customer, Optional<Long> way, WayKind kind, Instant at, String who) {
        return new ParcelId(jdbc.sql("""
            insert into parcel (customer_id, way_id, kind, state, packed_at, packed_by)
            values (:customer, :way, :kind, 'PACKED', :at, :who) returning id
            """)
                .param("customer", customer)
                .param("way", way.orElse(null))
                .param("kind", kind.name())
                .param("at", Timestamp.from(at))
                .param("who", who)
                .query(Long.class)
                .single());
    }

    /** What was weighed and measured before does not hold any more. */
    void put(ParcelId parcel, OrderId order) {
        unweighed(parcel);
        jdbc.sql("insert into parcel_order (parcel_id, order_id) values (:parcel, :order)")
                .param("parcel", parcel.value())
                .param("order", order.value())
                .update();
    }

    /** What was sent of it before does not count any more: it goes out again. */
    void noLongerCounts(OrderId order) {
        jdbc.sql("update parcel_order set counts = false where order_id = :order and counts")
                .param("order", order.value())
                .update();
    }

    /** As when it is put in: what was weighed and measured before does not hold any more. */
    void takeOut(ParcelId parcel, OrderId order) {
        unweighed(parcel);
        jdbc.sql("delete from parcel_order where parcel_id = :parcel and order_id = :order")
                .param("parcel", parcel.value())
                .param("order", order.value())
                .update();
    }

    void delete(ParcelId parcel) {
        jdbc.sql("delete from parcel where id = :id")
                .param("id", parcel.value())
                .update();
    }

    void move(ParcelId parcel, ParcelState to, Optional<Instant> left, Optional<Instant> arrived) {
        jdbc.sql("update parcel set state = :state, left_at = :left, arrived_at = :arrived where id = :id")
                .param("state", to.name())
                .param("left", left.map(Timestamp::from).orElse(null))
                .param("arrived", arrived.map(Timestamp::from).orElse(null))
                .param("id", parcel.value())
                .update();
    }

    void way(ParcelId parcel, long way, WayKind kind) {
        jdbc.sql("update parcel set way_id = :way, kind = :kind where id = :id")
                .param("way", way)
                .param("kind", kind.name())
                .param("id", parcel.value())
                .update();
    }

    void tracking(ParcelId parcel, String tracking) {
        jdbc.sql("update parcel set tracking = :tracking where id = :id")
                .param("tracking", tracking)
                .param("id", parcel.value())
                .update();
    }

    void weighed(ParcelId parcel, ParcelMeasure measure) {
        jdbc.sql("""
            update parcel set weight_g = :grams, long_mm = :long, middle_mm = :middle, short_mm = :short where id = :id
            """)
                .param("grams", measure.grams())
                .param("long", measure.longest().mm())
                .param("middle", measure.middle().mm())
                .param("short", measure.shortest().mm())
                .param("id", parcel.value())
                .update();
    }

    private void unweighed(ParcelId parcel) {
        jdbc.sql("update parcel set weight_g = null, long_mm = null, middle_mm = null, short_mm = null where id = :id")
                .param("id", parcel.value())
                .update();
    }

    void postage(ParcelId parcel, Optional<Money> postage) {
        jdbc.sql("update parcel set postage = :postage, currency = :currency where id = :id")
                .param("postage", postage.map(Money::amount).orElse(null))
                .param(
                        "currency",
                        postage.map(p -> p.currency().getCurrencyCode()).orElse(null))
                .param("id", parcel.value())
                .update();
    }

    void reminded(ParcelId parcel, Instant at) {
        jdbc.sql("update parcel set reminded_at = :at where id = :id")
                .param("at", Timestamp.from(at))
                .param("id", parcel.value())
                .update();
    }

    boolean lock(ParcelId parcel) {
        return jdbc.sql("select id from parcel where id = :id for update")
                .param("id", parcel.value())
                .query(Long.class)
                .optional()
                .isPresent();
    }

    Optional<Parcel> find(ParcelId id) {
        return read("p.id = any (:ids)", Map.of("ids", new Long[] {id.value()})).stream()
                .findFirst();
    }

    /** The parcels that count of these orders. */
    List<Parcel> ofOrders(Collection<OrderId> orders) {
        return read(
                "p.id in (select parcel_id from parcel_order where counts and order_id = any (:ids))",
                Map.of("ids", orders.stream().map(OrderId::value).toArray(Long[]::new)));
    }

    /** All parcels that an order was ever in, oldest first. */
    List<Parcel> everOf(OrderId order) {
        return read(
                "p.id in (select parcel_id from parcel_order where order_id = any (:ids))",
                Map.of("ids", new Long[] {order.value()}));
    }

    /** Those that have not arrived yet. */
    List<Parcel> underWay() {
        return read("p.arrived_at is null", Map.of());
    }

    /** Those that wait to be collected. */
    List<Parcel> waiting() {
        return read("p.arrived_at is null and p.state = 'READY'", Map.of());
    }

    List<Parcel> byTracking(String tracking) {
        List<Long> ids = jdbc.sql("select id from parcel where tracking = :tracking")
                .param("tracking", tracking)
                .query(Long.class)
                .list();
        return read("p.id = any (:ids)", Map.of("ids", ids.toArray(Long[]::new)));
    }

    private List<Parcel> read(String which, Map<String, Long[]> given) {
        List<ResultRow> rows = jdbc.sql("""
            select p.*, i.ids as order_ids, i.numbers as order_numbers
            from parcel p
            cross join lateral (select array_agg(r.id order by r.id) as ids, array_agg(r.number order by r.id) as numbers
                                from parcel_order o join order_ref r on r.id = o.order_id where o.parcel_id = p.id) i
            where %s order by p.id
            """.formatted(which))
                .params(given)
                .query((row, n) -> new ResultRow(row.getLong("customer_id"), parcel(row)))
                .list();
        if (rows.isEmpty()) {
            return List.of();
        }
        Map<Long, Customer> names = customers
                .all(rows.stream().map(ResultRow::customer).toList())
                .stream()
                .collect(Collectors.toMap(Customer::id, Function.identity()));
        return rows.stream()
                .map(row -> row.parcel().named(names.get(row.customer()).name()))
                .toList();
    }

    private record ResultRow(long customer, Parcel parcel) {}

    private static Parcel parcel(ResultSet row) throws SQLException {
        Optional<ParcelMeasure> measure = Optional.ofNullable(row.getObject("weight_g", Double.class))
                .flatMap(grams -> Optional.ofNullable(length(row, "long_mm"))
                        .map(longest ->
                                new ParcelMeasure(grams, longest, length(row, "middle_mm"), length(row, "short_mm"))));
        String currency = row.getString("currency");
        return new Parcel(
                new ParcelId(row.getLong("id")),
                row.getLong("customer_id"),
                "",
                Optional.ofNullable(row.getObject("way_id", Long.class)),
                WayKind.valueOf(row.getString("kind")),
                ParcelState.valueOf(row.getString("state")),
                inside(row),
                row.getString("tracking"),
                currency == null
                        ? Optional.empty()
                        : Optional.of(Money.of(row.getBigDecimal("postage"), Currency.getInstance(currency))
                                .rounded()),
                measure,
                row.getTimestamp("packed_at").toInstant(),
                moment(row, "left_at"),
                moment(row, "arrived_at"),
                moment(row, "reminded_at"));
    }

    private static List<OrderRef> inside(ResultSet row) throws SQLException {
        Array ids = row.getArray("order_ids");
        if (ids == null) {
            return List.of();
        }
        Long[] id = (Long[]) ids.getArray();
        String[] number = (String[]) row.getArray("order_numbers").getArray();
        return IntStream.range(0, id.length)
                .mapToObj(i -> new OrderRef(new OrderId(id[i]), number[i]))
                .toList();
    }

    private static Optional<Instant> moment(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getTimestamp(column)).map(Timestamp::toInstant);
    }

    private static Length length(ResultSet row, String column) {
        try {
            Double mm = row.getObject(column, Double.class);
            return mm == null ? null : Length.mm(mm);
        } catch (SQLException unreadable) {
            throw new IllegalStateException(unreadable);
        }
    }
}
