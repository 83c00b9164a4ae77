package puzzleworkshop.orders;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.BlankPlan.Part;
import puzzleworkshop.sheets.BoardFacts;
import puzzleworkshop.sheets.BoardOffer;
import puzzleworkshop.sheets.RackSettings;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.Suggestion;

/** The boards chosen for an order: kept with the quote, reserved when it is confirmed, released when it is given up. */
@Service
public class OrderBlanks {

    /**
     * One block of an order and where it is to be cut from.
     *
     * @param position from 1 on within the order
     * @param part what lies on it
     * @param sheet the sheet chosen; absent while a board is still to be bought
     * @param offer the board to buy; absent when a sheet gives the block
     * @param reserved whether the sheet is held for the order
     */
    public record Chosen(
            int position,
            Part part,
            int across,
            int down,
            Size size,
            Placement placement,
            Optional<SheetId> sheet,
            Optional<Long> offer,
            boolean reserved) {

        /** How many parts lie on it. */
        public int count() {
            return across * down;
        }

        public boolean mustBeBought() {
            return sheet.isEmpty();
        }
    }

    private static final RowMapper<Chosen> CHOSEN = (row, n) -> new Chosen(
            row.getInt("position"),
            Part.valueOf(row.getString("part")),
            row.getInt("across"),
            row.getInt("down"),
            Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")),
            new Placement(row.getDouble("x_mm"), row.getDouble("y_mm"), row.getDouble("degrees")),
            Optional.ofNullable(row.getObject("sheet_id", Long.class)).map(SheetId::new),
            Optional.ofNullable(row.getObject("offer_id", Long.class)),
            row.getBoolean("reserved"));

    private final JdbcClient jdbc;
    private final SheetRack rack;
    private final RackSettings settings;
    private final Orders orders;

    OrderBlanks(JdbcClient jdbc, SheetRack rack, RackSettings settings, Orders orders) {
        this.jdbc = jdbc;
        this.rack = rack;
        this.settings = settings;
        this.orders = orders;
    }

    public List<Chosen> of(OrderId order) {
        return jdbc.sql("""
                select b.*, r.id is not null as reserved
                from order_blank b left join sheet_reservation r
                    on r.sheet_id = b.sheet_id and r.order_id = b.order_id and r.ended_at is null
                where b.order_id = :order order by b.position
                """).param("order", order.value()).query(CHOSEN).list();
    }

    /** Those of the orders that wait for a board to be bought. */
    public Set<OrderId> mustBuy(Collection<OrderId> asked) {
        return jdbc.sql("select distinct order_id from order_blank where order_id = any (:orders) and sheet_id is null")
                .param("orders", asked.stream().map(OrderId::value).toArray(Long[]::new))
                .query((row, n) -> new OrderId(row.getLong("order_id")))
                .set();
    }

    /** Replaces what was chosen; nothing may be reserved yet. */
    @Transactional
    public void keep(OrderId order, BlankPlan plan) {
        jdbc.sql("delete from order_blank where order_id = :order")
                .param("order", order.value())
                .update();
        int position = 1;
        for (BlankPlan.Block block : plan.blocks()) {
            Placement placement = block.sheet()
                    .map(Suggestion::placement)
                    .orElseGet(() -> block.board().orElseThrow().placement());
            jdbc.sql("""
                    insert into order_blank (order_id, position, part, across, down, width_mm, height_mm, x_mm, y_mm, degrees,
                        sheet_id, offer_id)
                    values (:order, :position, :part, :across, :down, :width, :height, :x, :y, :degrees, :sheet, :offer)
                    """)
                    .param("order", order.value())
                    .param("position", position++)
                    .param("part", block.part().name())
                    .param("across", block.across())
                    .param("down", block.down())
                    .param("width", block.size().width().mm())
                    .param("height", block.size().height().mm())
                    .param("x", placement.x())
                    .param("y", placement.y())
                    .param("degrees", placement.degrees())
                    .param(
                            "sheet",
                            block.sheet().map(s -> s.sheet().id().value()).orElse(null))
                    .param("offer", block.board().map(b -> b.offer().id()).orElse(null))
                    .update();
        }
    }

    /** Other boards for a confirmed order that has become larger, more, or of other wood; held at once. */
    @Transactional
    void replace(OrderId order, BlankPlan plan, String who) {
        rack.release(order.value(), who);
        keep(order, plan);
        reserve(order, who);
    }

    /**
     * Holds every chosen sheet for the order that it has not cut already. Either all are held or none.
     *
     * @throws Refused when a sheet is taken meanwhile, with its number
     */
    @Transactional
    public void reserve(OrderId order, String who) {
        for (Chosen chosen : of(order)) {
            if (chosen.sheet().isPresent()
                    && !chosen.reserved()
                    && !cutFrom(order, chosen.sheet().get())) {
                rack.reserve(chosen.sheet().get(), order.value(), chosen.placement(), chosen.size(), who);
            }
        }
    }

    private boolean cutFrom(OrderId order, SheetId sheet) {
        return jdbc.sql("""
                select exists (select from sheet_reservation
                    where order_id = :order and sheet_id = :sheet and ended_how = 'CUT')
                """)
                .param("order", order.value())
                .param("sheet", sheet.value())
                .query(Boolean.class)
                .single();
    }

    /** Another place for one block, held at once when the order is confirmed. */
    @Transactional
    public void choose(OrderId order, int position, Suggestion suggestion, boolean hold, String who) {
        Chosen before = find(order, position);
        if (before.reserved()) {
            rack.release(order.value(), who);
        }
        jdbc.sql("""
                update order_blank set sheet_id = :sheet, offer_id = null, x_mm = :x, y_mm = :y, degrees = :degrees
                where order_id = :order and position = :position
                """)
                .param("sheet", suggestion.sheet().id().value())
                .param("x", suggestion.placement().x())
                .param("y", suggestion.placement().y())
                .param("degrees", suggestion.placement().degrees())
                .param("order", order.value())
                .param("position", position)
                .update();
        if (hold) {
            reserve(order, who);
        }
        orders.note(
                order,
                Sentence.of("orders.history.sheet", suggestion.sheet().id().value()),
                who);
    }

    /** The board that had to be bought has come: it goes on the rack and is held for the order. */
    @Transactional
    public void arrived(OrderId order, int position, String place, String who) {
        Chosen chosen = find(order, position);
        BoardOffer offer = chosen.offer()
                .flatMap(id ->
                        settings.offers().stream().filter(o -> o.id() == id).findFirst())
                .orElseThrow(() -> new Refused("orders.board.no-offer"));
        BoardFacts facts = BoardFacts.clean(offer.material(), offer.grade(), offer.thickness())
                .at(place);
        SheetId sheet = rack.add(Outline.rectangle(offer.size()), facts, offer.price(), who);
        jdbc.sql(
                        "update order_blank set sheet_id = :sheet, offer_id = null where order_id = :order and position = :position")
                .param("sheet", sheet.value())
                .param("order", order.value())
                .param("position", position)
                .update();
        reserve(order, who);
        orders.note(order, Sentence.of("orders.history.board-arrived", offer.name(), sheet.value()), who);
    }

    /** What the order holds is free again when it is given up; in the same transaction. */
    @EventListener
    void cancelled(OrderCancelled event) {
        rack.release(event.order().value(), event.who());
    }

    private Chosen find(OrderId order, int position) {
        return of(order).stream()
                .filter(chosen -> chosen.position() == position)
                .findFirst()
                .orElseThrow(() -> new Refused("orders.board.no-block"));
    }
}
