package puzzleworkshop.sheets;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Remainder;
import puzzleworkshop.geometry.fit.RectanglePlaces;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.WaitingBlanks.WaitingBlank;

/**
 * Several blanks on one sheet: it is held for the first, the others follow on what that one leaves. A sheet is never held
 * twice; a follower gets its hold when the offcut exists (or the first gives the sheet up), and waits again when its place
 * is gone.
 */
@Component
class SheetFollows {

    private static final String OPEN = "select * from sheet_follow where ended_at is null";

    private final JdbcClient jdbc;
    private final SheetStore sheets;
    private final RackStore settings;
    private final SheetFinder finder;
    private final ObjectProvider<WaitingBlanks> orders;
    private final Clock clock;

    SheetFollows(
            JdbcClient jdbc,
            SheetStore sheets,
            RackStore settings,
            SheetFinder finder,
            ObjectProvider<WaitingBlanks> orders,
            Clock clock) {
        this.jdbc = jdbc;
        this.sheets = sheets;
        this.settings = settings;
        this.finder = finder;
        this.orders = orders;
        this.clock = clock;
    }

    List<FollowingBlank> all() {
        return jdbc.sql(OPEN + " order by id").query(SheetFollows::follow).list();
    }

    List<FollowingBlank> on(SheetId sheet) {
        return jdbc.sql(OPEN + " and sheet_id = :sheet order by id")
                .param("sheet", sheet.value())
                .query(SheetFollows::follow)
                .list();
    }

    /** @throws Refused when the sheet is not held, or the place is not free beside the blanks that come before */
    void add(SheetId id, long orderId, int position, Placement place, Size blank, String who) {
        sheets.hold(id);
        Sheet sheet = sheets.get(id);
        Reservation held = sheet.reservation().orElseThrow(() -> new Refused("sheets.cut.notreserved", id.toString()));
        List<Outline> left = without(List.of(sheet.outline()), held.placement(), held.blank());
        for (FollowingBlank before : on(id)) {
            left = without(left, before.placement(), before.blank());
        }
        if (left.stream().noneMatch(part -> RectanglePlaces.accepts(part, blank, place))) {
            throw new Refused("sheets.place.outside", blank, id.toString());
        }
        drop(orderId, position);
        jdbc.sql("""
                insert into sheet_follow
                    (sheet_id, order_id, position, x_mm, y_mm, degrees, width_mm, height_mm, who, planned_at)
                values (:sheet, :order, :position, :x, :y, :degrees, :width, :height, :who, :now)
                """)
                .param("sheet", id.value())
                .param("order", orderId)
                .param("position", position)
                .param("x", place.x())
                .param("y", place.y())
                .param("degrees", place.degrees())
                .param("width", blank.width().mm())
                .param("height", blank.height().mm())
                .param("who", who)
                .param("now", SheetStore.at(clock.instant()))
                .update();
    }

    private List<Outline> without(List<Outline> parts, Placement place, Size blank) {
        List<Outline> left = new ArrayList<>();
        for (Outline part : parts) {
            if (RectanglePlaces.accepts(part, blank, place)) {
                Remainder.after(part, blank, place, settings.rules().kerf(), finder.sizes())
                        .parts()
                        .forEach(rest -> left.add(rest.outline()));
            } else {
                left.add(part);
            }
        }
        return left;
    }

    void drop(long orderId, int position) {
        jdbc.sql("""
                update sheet_follow set ended_at = :now, ended_how = 'DROPPED'
                where order_id = :order and position = :position and ended_at is null
                """)
                .param("now", SheetStore.at(clock.instant()))
                .param("order", orderId)
                .param("position", position)
                .update();
    }

    /**
     * The sheet's blank is cut, or the sheet is free again: the followers get what has their place.
     *
     * @param shapes in the old sheet's coordinates
     * @param pieces the sheets that have these shapes, each moved to its origin
     */
    void passOn(SheetId from, List<Outline> shapes, List<SheetId> pieces, String who) {
        List<FollowingBlank> followers = on(from);
        for (FollowingBlank follower : followers) {
            drop(follower.orderId(), follower.position());
        }
        for (FollowingBlank follower : followers) {
            for (int i = 0; i < shapes.size(); i++) {
                if (RectanglePlaces.accepts(shapes.get(i), follower.blank(), follower.placement())) {
                    Placement moved = new Placement(
                            follower.placement().x() - shapes.get(i).origin().x(),
                            follower.placement().y() - shapes.get(i).origin().y(),
                            follower.placement().degrees());
                    give(follower, pieces.get(i), moved, who);
                    break;
                }
            }
        }
    }

    private void give(FollowingBlank follower, SheetId piece, Placement place, String who) {
        Optional<WaitingBlank> waiting = Optional.ofNullable(orders.getIfAvailable()).stream()
                .flatMap(port -> port.waiting().stream())
                .filter(one -> one.orderId() == follower.orderId() && one.position() == follower.position())
                .findFirst();
        if (waiting.isEmpty()) {
            return;
        }
        if (sheets.hold(piece) == SheetState.FREE) {
            orders.getObject().hold(waiting.get(), piece, place, who);
            jdbc.sql("update sheet_follow set ended_how = 'HELD', given = :given where id = :id")
                    .param("given", piece.value())
                    .param("id", follower.id())
                    .update();
        } else {
            add(piece, follower.orderId(), follower.position(), place, follower.blank(), who);
        }
    }

    /** The order whose blank came to this offcut as a follower. */
    Optional<Long> broughtTo(SheetId offcut) {
        return jdbc.sql("select order_id from sheet_follow where given = :offcut order by id desc limit 1")
                .param("offcut", offcut.value())
                .query(Long.class)
                .optional();
    }

    /** The offcuts never were: those who came to them follow on the sheet again. */
    void follow(SheetId again, SheetId offcut) {
        jdbc.sql("""
                update sheet_follow set ended_at = null, ended_how = null, given = null
                where given = :offcut and sheet_id = :sheet
                """)
                .param("offcut", offcut.value())
                .param("sheet", again.value())
                .update();
    }

    private static FollowingBlank follow(ResultSet row, int n) throws SQLException {
        return new FollowingBlank(
                row.getLong("id"),
                new SheetId(row.getLong("sheet_id")),
                row.getLong("order_id"),
                row.getInt("position"),
                new Placement(row.getDouble("x_mm"), row.getDouble("y_mm"), row.getDouble("degrees")),
                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")));
    }
}
