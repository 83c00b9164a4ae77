package puzzleworkshop.orders;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.BlankWish;
import puzzleworkshop.sheets.Grade;
import puzzleworkshop.sheets.RackSettings;
import puzzleworkshop.sheets.SheetFinder;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.Suggestion;
import puzzleworkshop.sheets.WaitingBlanks;

/** Tells the rack which confirmed orders still have no sheet, and holds one for them. */
@Service
class BlanksAwaited implements WaitingBlanks {

    private final JdbcClient jdbc;
    private final OrderBlanks blanks;
    private final SheetFinder finder;
    private final RackSettings settings;

    BlanksAwaited(JdbcClient jdbc, OrderBlanks blanks, SheetFinder finder, RackSettings settings) {
        this.jdbc = jdbc;
        this.blanks = blanks;
        this.finder = finder;
        this.settings = settings;
    }

    @Override
    @Transactional(readOnly = true)
    public List<WaitingBlank> waiting() {
        Length bow = settings.rules().mostBow();
        return jdbc.sql("""
                select o.id, o.number, c.name, o.promised_on, o.board_material, o.board_grade, o.board_thickness_mm,
                       b.position, b.width_mm, b.height_mm
                from customer_order o
                join customer c on c.id = o.customer_id
                join order_blank b on b.order_id = o.id
                where o.state = 'CONFIRMED' and o.next_stage in ('PRINT', 'LAMINATE', 'SHEET_PREP')
                  and not exists (select from sheet_reservation r where r.order_id = o.id and r.sheet_id = b.sheet_id
                                  and (r.ended_at is null or r.ended_how = 'CUT'))
                order by o.confirmed_at, o.id, b.position
                """)
                .query((row, n) -> new WaitingBlank(
                        row.getLong("id"),
                        row.getInt("position"),
                        row.getString("number"),
                        row.getString("name"),
                        new BlankWish(
                                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")),
                                Set.of(row.getString("board_material")),
                                Set.of(Grade.valueOf(row.getString("board_grade"))),
                                Length.mm(row.getDouble("board_thickness_mm")),
                                bow,
                                BlankWish.GrainWish.ANY),
                        Optional.ofNullable(row.getObject("promised_on", LocalDate.class))))
                .list();
    }

    @Override
    @Transactional
    public void hold(WaitingBlank blank, SheetId sheet, Placement place, String who) {
        Suggestion suggestion = finder.at(sheet, blank.wish(), place)
                .orElseThrow(
                        () -> new Refused("sheets.place.outside", blank.wish().size(), sheet.toString()));
        blanks.choose(new OrderId(blank.orderId()), blank.position(), suggestion, true, who);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<String> numberOf(long orderId) {
        return jdbc.sql("select number from customer_order where id = :id")
                .param("id", orderId)
                .query(String.class)
                .optional();
    }
}
