package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;

@Repository
class SupplyStore {

    private static final String MOVEMENTS = """
        select m.*, i.name as item_name, i.currency as item_currency, s.name as supplier_name, s.contact as supplier_contact,
               o.number as order_number
        from supply_movement m join supply_item i on i.id = m.item_id left join supplier s on s.id = m.supplier_id
        left join order_ref o on o.id = m.order_id
        """;

    private final JdbcClient jdbc;

    SupplyStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<SupplyItem> items() {
        return jdbc.sql("select * from supply_item where not retired order by kind, name")
                .query(SupplyStore::item)
                .list();
    }

    Optional<SupplyItem> find(SupplyId id) {
        return jdbc.sql("select * from supply_item where id = :id")
                .param("id", id.value())
                .query(SupplyStore::item)
                .optional();
    }

    /** The item, with its row locked until the transaction ends. */
    Optional<SupplyItem> lock(SupplyId id) {
        return jdbc.sql("select * from supply_item where id = :id for update")
                .param("id", id.value())
                .query(SupplyStore::item)
                .optional();
    }

    void noLongerUsual(SupplyKind kind) {
        jdbc.sql("update supply_item set usual = false where kind = :kind and usual")
                .param("kind", kind.name())
                .update();
    }

    SupplyId add(SupplyItem item) {
        return new SupplyId(facts(item, jdbc.sql("""
            insert into supply_item (name, kind, use_unit, width_mm, height_mm, purchase_unit, use_per_purchase, pvc,
                adhesive, lead_days, spare_days, own_point, usual, retired, currency)
            values (:name, :kind, :useUnit, :width, :height, :purchaseUnit, :usePerPurchase, :pvc,
                :adhesive, :leadDays, :spareDays, :ownPoint, :usual, :retired, :currency)
            returning id
            """))
                .param("currency", item.unitCost().currency().getCurrencyCode())
                .query(Long.class)
                .single());
    }

    void change(SupplyId id, SupplyItem item) {
        facts(item, jdbc.sql("""
            update supply_item set name = :name, kind = :kind, use_unit = :useUnit, width_mm = :width,
                height_mm = :height, purchase_unit = :purchaseUnit, use_per_purchase = :usePerPurchase, pvc = :pvc,
                adhesive = :adhesive, lead_days = :leadDays, spare_days = :spareDays, own_point = :ownPoint,
                usual = :usual, retired = :retired
            where id = :id
            """)).param("id", id.value()).update();
    }

    private static JdbcClient.StatementSpec facts(SupplyItem item, JdbcClient.StatementSpec sql) {
        return sql.param("name", item.name().strip())
                .param("kind", item.kind().name())
                .param("useUnit", item.useUnit().name())
                .param("width", item.width().map(Length::mm).orElse(null))
                .param("height", item.height().map(Length::mm).orElse(null))
                .param("purchaseUnit", item.purchaseUnit().strip())
                .param("usePerPurchase", item.usePerPurchase())
                .param("pvc", item.facts().pvc().name())
                .param("adhesive", item.facts().adhesive().name())
                .param("leadDays", item.leadDays())
                .param("spareDays", item.spareDays())
                .param("ownPoint", item.ownPoint().orElse(null))
                .param("usual", item.usual())
                .param("retired", item.retired());
    }

    int lastNumber(SupplyId id) {
        return jdbc.sql("select last_movement from supply_item where id = :id")
                .param("id", id.value())
                .query(Integer.class)
                .single();
    }

    Map<SupplyId, Integer> lastNumbers() {
        Map<SupplyId, Integer> last = new HashMap<>();
        jdbc.sql("select id, last_movement from supply_item")
                .query((row, n) -> last.put(new SupplyId(row.getLong("id")), row.getInt("last_movement")))
                .list();
        return last;
    }

    /** What the ledger said after a movement; nothing before the first. */
    BigDecimal stockAfter(SupplyId id, int number) {
        return jdbc.sql("select stock_after from supply_movement where item_id = :id and number = :number")
                .param("id", id.value())
                .param("number", number)
                .query(BigDecimal.class)
                .optional()
                .orElse(BigDecimal.ZERO);
    }

    void add(Movement movement, boolean belowZeroAccepted) {
        jdbc.sql("""
            insert into supply_movement (item_id, number, kind, quantity, unit_cost, stock_after, average_after,
                order_id, supplier_id, total_paid, below_zero_ok, note, who, at)
            values (:item, :number, :kind, :quantity, :unitCost, :stockAfter, :averageAfter,
                :order, :supplier, :paid, :belowZero, :note, :who, :at)
            """)
                .param("item", movement.item().value())
                .param("number", movement.number())
                .param("kind", movement.kind().name())
                .param("quantity", movement.quantity())
                .param("unitCost", movement.unitCost().amount())
                .param("stockAfter", movement.stockAfter())
                .param("averageAfter", movement.averageAfter().amount())
                .param(
                        "order",
                        movement.order().map(order -> order.id().value()).orElse(null))
                .param("supplier", movement.supplier().map(Supplier::id).orElse(null))
                .param("paid", movement.paid().map(Money::amount).orElse(null))
                .param("belowZero", belowZeroAccepted)
                .param("note", movement.note())
                .param("who", movement.who())
                .param("at", movement.at().atOffset(ZoneOffset.UTC))
                .update();
    }

    List<Movement> movements(SupplyId item, int offset, int limit) {
        return jdbc.sql(MOVEMENTS + " where m.item_id = :item order by m.number desc offset :offset limit :limit")
                .param("item", item.value())
                .param("offset", offset)
                .param("limit", limit)
                .query(SupplyStore::movement)
                .list();
    }

    List<Movement> purchases(SupplyId item) {
        return jdbc.sql(MOVEMENTS + " where m.item_id = :item and m.kind = 'BOUGHT' order by m.number")
                .param("item", item.value())
                .query(SupplyStore::movement)
                .list();
    }

    /** The last purchase of each supply that was ever bought. */
    Map<SupplyId, Movement> lastPurchases() {
        return jdbc.sql(MOVEMENTS + """
                     where m.id in (select distinct on (item_id) id from supply_movement
                                    where kind = 'BOUGHT' order by item_id, number desc)
                    """).query(SupplyStore::movement).list().stream()
                .collect(Collectors.toMap(Movement::item, Function.identity()));
    }

    List<Movement> ofOrder(OrderId order) {
        return jdbc.sql(MOVEMENTS + " where m.order_id = :order order by m.id")
                .param("order", order.value())
                .query(SupplyStore::movement)
                .list();
    }

    Optional<Movement> lastBefore(SupplyId item, Instant at) {
        return jdbc.sql(MOVEMENTS + " where m.item_id = :item and m.at <= :at order by m.number desc limit 1")
                .param("item", item.value())
                .param("at", at.atOffset(ZoneOffset.UTC))
                .query(SupplyStore::movement)
                .optional();
    }

    /**
     * What the ledger says of one supply's use.
     *
     * @param first movement of any kind
     * @param days whole ones since its first use, from 1 to those looked at; 0 while none was used
     * @param used over these days: used or spoiled, what came back from orders taken off
     */
    record Use(Instant first, int days, BigDecimal used) {}

    /** Of each supply that has a history. */
    Map<SupplyId, Use> uses(Instant now, int mostDays) {
        Map<SupplyId, Use> uses = new HashMap<>();
        jdbc.sql("""
            select m.item_id, min(m.at) as first, coalesce(u.days, 0) as days,
                coalesce(-sum(m.quantity) filter (where m.kind in ('USED', 'SPOILED', 'RETURNED')
                    and m.at >= cast(:now as timestamptz) - u.days * interval '24 hours'), 0) as used
            from supply_movement m left join (
                select item_id, least(:most, greatest(1, floor(extract(epoch from :now - min(at)) / 86400)))::int as days
                from supply_movement where kind = 'USED' group by item_id) u on u.item_id = m.item_id
            group by m.item_id, u.days
            """)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("most", mostDays)
                .query(row -> {
                    uses.put(
                            new SupplyId(row.getLong("item_id")),
                            new Use(
                                    row.getTimestamp("first").toInstant(),
                                    row.getInt("days"),
                                    row.getBigDecimal("used")));
                });
        return uses;
    }

    List<Supplier> suppliers() {
        return jdbc.sql("select id, name, contact from supplier order by name")
                .query((row, n) -> new Supplier(row.getLong("id"), row.getString("name"), row.getString("contact")))
                .list();
    }

    /** The supplier of that name, added when it is new. */
    Supplier supplier(String name) {
        return jdbc.sql("""
            insert into supplier (name) values (:name)
            on conflict (name) do update set name = excluded.name returning id, name, contact
            """)
                .param("name", name.strip())
                .query((row, n) -> new Supplier(row.getLong("id"), row.getString("name"), row.getString("contact")))
                .single();
    }

    private static SupplyItem item(ResultSet row, int n) throws SQLException {
        Currency currency = Currency.getInstance(row.getString("currency"));
        return new SupplyItem(
                Optional.of(new SupplyId(row.getLong("id"))),
                row.getString("name"),
                SupplyKind.valueOf(row.getString("kind")),
                UseUnit.valueOf(row.getString("use_unit")),
                length(row.getBigDecimal("width_mm")),
                length(row.getBigDecimal("height_mm")),
                row.getString("purchase_unit"),
                row.getBigDecimal("use_per_purchase").stripTrailingZeros(),
                new LaserFacts(
                        LaserFacts.Pvc.valueOf(row.getString("pvc")),
                        LaserFacts.Adhesive.valueOf(row.getString("adhesive"))),
                row.getInt("lead_days"),
                row.getInt("spare_days"),
                Optional.ofNullable(row.getBigDecimal("own_point")).map(SupplyStore::plain),
                row.getBoolean("usual"),
                row.getBoolean("retired"),
                row.getBigDecimal("stock"),
                Money.of(row.getBigDecimal("average_cost"), currency));
    }

    private static Movement movement(ResultSet row, int n) throws SQLException {
        Currency currency = Currency.getInstance(row.getString("item_currency"));
        long order = row.getLong("order_id");
        Optional<OrderRef> ref = row.wasNull()
                ? Optional.empty()
                : Optional.of(new OrderRef(new OrderId(order), row.getString("order_number")));
        String supplierName = row.getString("supplier_name");
        Optional<Supplier> supplier = supplierName == null
                ? Optional.empty()
                : Optional.of(
                        new Supplier(row.getLong("supplier_id"), supplierName, row.getString("supplier_contact")));
        return new Movement(
                new SupplyId(row.getLong("item_id")),
                row.getString("item_name"),
                row.getInt("number"),
                Movement.Kind.valueOf(row.getString("kind")),
                row.getBigDecimal("quantity"),
                Money.of(row.getBigDecimal("unit_cost"), currency),
                row.getBigDecimal("stock_after"),
                Money.of(row.getBigDecimal("average_after"), currency),
                ref,
                supplier,
                Optional.ofNullable(row.getBigDecimal("total_paid")).map(paid -> Money.of(paid, currency)),
                row.getString("note"),
                row.getString("who"),
                row.getTimestamp("at").toInstant());
    }

    private static BigDecimal plain(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    private static Optional<Length> length(BigDecimal mm) {
        return Optional.ofNullable(mm).map(value -> Length.mm(value.doubleValue()));
    }
}
