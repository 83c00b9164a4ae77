package puzzleworkshop.sheets;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Currency;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.CostSplit;
import puzzleworkshop.sheets.board.OffcutCost;

/** Reservations and cuts. */
@Repository
public class CutStore {

    private static final String CUTS = """
            select c.*, o.number as order_number,
                   array(select s.id from sheet s where s.from_cut = c.id order by s.id) as offcuts
            from sheet_cut c left join order_ref o on o.id = c.order_id
            """;

    private final JdbcClient jdbc;

    CutStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void reserve(SheetId sheet, OrderId order, Placement placement, Size blank, String who, Instant now) {
        jdbc.sql("""
                insert into sheet_reservation
                    (sheet_id, order_id, x_mm, y_mm, degrees, width_mm, height_mm, who, reserved_at)
                values (:sheet, :order, :x, :y, :degrees, :width, :height, :who, :now)
                """)
                .param("sheet", sheet.value())
                .param("order", order.value())
                .param("x", placement.x())
                .param("y", placement.y())
                .param("degrees", placement.degrees())
                .param("width", blank.width().mm())
                .param("height", blank.height().mm())
                .param("who", who)
                .param("now", SheetStore.at(now))
                .update();
    }

    void end(long reservation, String how, Instant now) {
        jdbc.sql("update sheet_reservation set ended_at = :now, ended_how = :how where id = :id and ended_at is null")
                .param("now", SheetStore.at(now))
                .param("how", how)
                .param("id", reservation)
                .update();
    }

    void reopen(long reservation) {
        jdbc.sql("update sheet_reservation set ended_at = null, ended_how = null where id = :id")
                .param("id", reservation)
                .update();
    }

    List<SheetId> heldFor(OrderId order) {
        return jdbc
                .sql("select sheet_id from sheet_reservation where order_id = :order and ended_at is null order by id")
                .param("order", order.value())
                .query(Long.class)
                .list()
                .stream()
                .map(SheetId::new)
                .toList();
    }

    /** Sheets held, by the order that holds them; in the order in which they were. */
    Map<OrderId, List<SheetId>> heldFor(Collection<OrderId> orders) {
        Map<OrderId, List<SheetId>> held = new HashMap<>();
        jdbc.sql(
                        "select order_id, sheet_id from sheet_reservation where order_id = any (:orders) and ended_at is null order by id")
                .param("orders", ids(orders))
                .query((row, n) -> held.computeIfAbsent(
                                new OrderId(row.getLong("order_id")), order -> new ArrayList<>())
                        .add(new SheetId(row.getLong("sheet_id"))))
                .list();
        return held;
    }

    /** Sheets with a cut that stands, by the order it was for. */
    Map<OrderId, Set<SheetId>> cutFor(Collection<OrderId> orders) {
        Map<OrderId, Set<SheetId>> cut = new HashMap<>();
        jdbc.sql("select order_id, sheet_id from sheet_cut where order_id = any (:orders) and undone_at is null")
                .param("orders", ids(orders))
                .query((row, n) -> cut.computeIfAbsent(new OrderId(row.getLong("order_id")), order -> new HashSet<>())
                        .add(new SheetId(row.getLong("sheet_id"))))
                .list();
        return cut;
    }

    private static Long[] ids(Collection<OrderId> orders) {
        return orders.stream().map(OrderId::value).toArray(Long[]::new);
    }

    /** Those of the orders that have a cut which stands. */
    Set<OrderId> withCuts(Collection<OrderId> orders) {
        return jdbc.sql("select distinct order_id from sheet_cut where order_id = any (:orders) and undone_at is null")
                .param("orders", ids(orders))
                .query((row, n) -> new OrderId(row.getLong("order_id")))
                .set();
    }

    public Optional<OrderRef> holder(SheetId sheet) {
        return jdbc.sql("""
                select o.id, o.number from sheet_reservation r join order_ref o on o.id = r.order_id
                where r.sheet_id = :sheet and r.ended_at is null
                """)
                .param("sheet", sheet.value())
                .query((row, n) -> new OrderRef(new OrderId(row.getLong("id")), row.getString("number")))
                .optional();
    }

    /** @param order for which the blank is; none when it was spoiled before it became a puzzle */
    long cut(
            Reservation reservation,
            Optional<OrderId> order,
            CostSplit split,
            Money cost,
            OffcutCost rule,
            String who,
            Instant now) {
        Money offcuts = Money.sum(split.offcuts(), cost.currency());
        return jdbc.sql("""
                insert into sheet_cut (sheet_id, reservation_id, order_id, x_mm, y_mm, degrees, width_mm, height_mm,
                    offcut_cost, cost_in, cost_blank, cost_offcuts, cost_scrapped, currency, who, cut_at)
                values (:sheet, :reservation, :order, :x, :y, :degrees, :width, :height,
                    :rule, :costIn, :costBlank, :costOffcuts, :costScrapped, :currency, :who, :now)
                returning id
                """)
                .param("sheet", reservation.sheet().value())
                .param("reservation", reservation.id())
                .param("order", order.map(OrderId::value).orElse(null))
                .param("x", reservation.placement().x())
                .param("y", reservation.placement().y())
                .param("degrees", reservation.placement().degrees())
                .param("width", reservation.blank().width().mm())
                .param("height", reservation.blank().height().mm())
                .param("rule", rule.name())
                .param("costIn", cost.amount())
                .param("costBlank", split.blank().amount())
                .param("costOffcuts", offcuts.amount())
                .param("costScrapped", split.scrapped().amount())
                .param("currency", cost.currency().getCurrencyCode())
                .param("who", who)
                .param("now", SheetStore.at(now))
                .query(Long.class)
                .single();
    }

    void markUndone(long cut, Instant now) {
        jdbc.sql("update sheet_cut set undone_at = :now where id = :id")
                .param("now", SheetStore.at(now))
                .param("id", cut)
                .update();
    }

    Optional<Long> reservationOf(long cut) {
        return jdbc.sql("select reservation_id from sheet_cut where id = :id")
                .param("id", cut)
                .query(Long.class)
                .optional();
    }

    Optional<Cut> find(long cut) {
        return jdbc.sql(CUTS + " where c.id = :id")
                .param("id", cut)
                .query(CutStore::cut)
                .optional();
    }

    Optional<Cut> standing(SheetId sheet) {
        return jdbc.sql(CUTS + " where c.sheet_id = :id and c.undone_at is null")
                .param("id", sheet.value())
                .query(CutStore::cut)
                .optional();
    }

    List<Cut> ofOrder(OrderId order) {
        return jdbc.sql(CUTS + " where c.order_id = :order and c.undone_at is null order by c.id")
                .param("order", order.value())
                .query(CutStore::cut)
                .list();
    }

    private static Cut cut(ResultSet row, int n) throws SQLException {
        Currency currency = Currency.getInstance(row.getString("currency"));
        long order = row.getLong("order_id");
        Optional<OrderRef> ref = row.wasNull()
                ? Optional.empty()
                : Optional.of(new OrderRef(new OrderId(order), row.getString("order_number")));
        Long[] offcuts = (Long[]) row.getArray("offcuts").getArray();
        return new Cut(
                row.getLong("id"),
                new SheetId(row.getLong("sheet_id")),
                ref,
                new Placement(row.getDouble("x_mm"), row.getDouble("y_mm"), row.getDouble("degrees")),
                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")),
                Money.of(row.getBigDecimal("cost_in"), currency),
                Money.of(row.getBigDecimal("cost_blank"), currency),
                Money.of(row.getBigDecimal("cost_offcuts"), currency),
                Money.of(row.getBigDecimal("cost_scrapped"), currency),
                Arrays.stream(offcuts).map(SheetId::new).toList(),
                row.getString("who"),
                row.getObject("cut_at", OffsetDateTime.class).toInstant(),
                row.getObject("undone_at") != null);
    }
}
