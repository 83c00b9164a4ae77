package puzzleworkshop.boards;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.boards.BlankPlan.Part;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.find.Suggestion;

/** The blanks of orders, and those that follow on a sheet held for another. */
@Repository
class BoardStore {

    private static final String FOLLOWS = """
        select f.*, o.number from sheet_follow f join order_ref o on o.id = f.order_id where f.ended_at is null
        """;

    private final JdbcClient jdbc;

    BoardStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Blanks of each order by position; whether they are held or cut, the rack knows. */
    Map<OrderId, List<Chosen>> blanks(Collection<OrderId> orders) {
        Map<OrderId, List<Chosen>> blanks = new HashMap<>();
        jdbc.sql("select * from order_blank where order_id = any (:orders) order by order_id, position")
                .param("orders", orders.stream().map(OrderId::value).toArray(Long[]::new))
                .query((row, n) -> blanks.computeIfAbsent(
                                new OrderId(row.getLong("order_id")), order -> new ArrayList<>())
                        .add(blank(row)))
                .list();
        return blanks;
    }

    private static Chosen blank(ResultSet row) throws SQLException {
        return new Chosen(
                row.getInt("position"),
                Part.valueOf(row.getString("part")),
                row.getInt("across"),
                row.getInt("down"),
                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")),
                placement(row),
                Optional.ofNullable(row.getObject("sheet_id", Long.class)).map(SheetId::new),
                Optional.ofNullable(row.getObject("offer_id", Long.class)),
                false,
                false);
    }

    /** Replaces all blanks of an order. */
    void plan(OrderId order, BlankPlan plan) {
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

    void place(OrderId order, int position, SheetId sheet, Placement place) {
        jdbc.sql("""
            update order_blank set sheet_id = :sheet, offer_id = null, x_mm = :x, y_mm = :y, degrees = :degrees
            where order_id = :order and position = :position
            """)
                .param("sheet", sheet.value())
                .param("x", place.x())
                .param("y", place.y())
                .param("degrees", place.degrees())
                .param("order", order.value())
                .param("position", position)
                .update();
    }

    /** All that wait for what a held sheet leaves, oldest first. */
    List<FollowingBlank> following() {
        return jdbc.sql(FOLLOWS + " order by f.id").query(BoardStore::follow).list();
    }

    List<FollowingBlank> following(SheetId sheet) {
        return jdbc.sql(FOLLOWS + " and f.sheet_id = :sheet order by f.id")
                .param("sheet", sheet.value())
                .query(BoardStore::follow)
                .list();
    }

    List<FollowingBlank> following(OrderId order) {
        return jdbc.sql(FOLLOWS + " and f.order_id = :order order by f.id")
                .param("order", order.value())
                .query(BoardStore::follow)
                .list();
    }

    void follow(SheetId sheet, OrderId order, int position, Placement place, Size blank, String who, Instant now) {
        jdbc.sql("""
            insert into sheet_follow
                (sheet_id, order_id, position, x_mm, y_mm, degrees, width_mm, height_mm, who, planned_at)
            values (:sheet, :order, :position, :x, :y, :degrees, :width, :height, :who, :now)
            """)
                .param("sheet", sheet.value())
                .param("order", order.value())
                .param("position", position)
                .param("x", place.x())
                .param("y", place.y())
                .param("degrees", place.degrees())
                .param("width", blank.width().mm())
                .param("height", blank.height().mm())
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
    }

    void drop(FollowingBlank follower, Instant now) {
        jdbc.sql("update sheet_follow set ended_at = :now, ended_how = 'DROPPED' where id = :id and ended_at is null")
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("id", follower.id())
                .update();
    }

    void given(FollowingBlank follower, SheetId piece, Instant now) {
        jdbc.sql("update sheet_follow set ended_at = :now, ended_how = 'HELD', given = :given where id = :id")
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("given", piece.value())
                .param("id", follower.id())
                .update();
    }

    /** The order whose blank came to this offcut as a follower. */
    Optional<OrderId> broughtTo(SheetId offcut) {
        return jdbc.sql("select order_id from sheet_follow where given = :offcut order by id desc limit 1")
                .param("offcut", offcut.value())
                .query((row, n) -> new OrderId(row.getLong("order_id")))
                .optional();
    }

    /** The offcut never was: whoever came to it follows on the sheet again. */
    void followAgain(SheetId sheet, SheetId offcut) {
        jdbc.sql("""
            update sheet_follow set ended_at = null, ended_how = null, given = null
            where given = :offcut and sheet_id = :sheet
            """)
                .param("offcut", offcut.value())
                .param("sheet", sheet.value())
                .update();
    }

    private static FollowingBlank follow(ResultSet row, int n) throws SQLException {
        return new FollowingBlank(
                row.getLong("id"),
                new SheetId(row.getLong("sheet_id")),
                new OrderRef(new OrderId(row.getLong("order_id")), row.getString("number")),
                row.getInt("position"),
                placement(row),
                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")));
    }

    private static Placement placement(ResultSet row) throws SQLException {
        return new Placement(row.getDouble("x_mm"), row.getDouble("y_mm"), row.getDouble("degrees"));
    }
}
