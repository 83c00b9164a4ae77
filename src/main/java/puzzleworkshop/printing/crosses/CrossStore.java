package puzzleworkshop.printing.crosses;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Size;

@Repository
class CrossStore {

    private final JdbcClient jdbc;

    CrossStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    PrintedCrosses.Setting setting() {
        return jdbc.sql("select * from print_cross")
                .query((row, n) -> new PrintedCrosses.Setting(
                        row.getBoolean("printed"),
                        new Crosses(Length.mm(row.getDouble("span_mm")), Length.mm(row.getDouble("away_mm")))))
                .optional()
                .orElse(new PrintedCrosses.Setting(true, Crosses.USUAL));
    }

    void keep(PrintedCrosses.Setting setting) {
        jdbc.sql("""
            insert into print_cross (one, printed, span_mm, away_mm) values (true, :printed, :span, :away)
            on conflict (one) do update set printed = excluded.printed, span_mm = excluded.span_mm,
                away_mm = excluded.away_mm
            """)
                .param("printed", setting.printed())
                .param("span", setting.crosses().span().mm())
                .param("away", setting.crosses().away().mm())
                .update();
    }

    /** What was printed last, else what is planned. */
    Optional<PrintedSticker> stickerOf(OrderId order) {
        return jdbc.sql("""
            select i.width_mm, i.height_mm, i.overhang_mm, r.cross_span_mm, r.cross_away_mm
            from print_run_item i join print_run r on r.id = i.run_id
            where i.order_id = :order and i.outcome in ('PLANNED', 'PRINTED')
            order by i.outcome = 'PRINTED' desc, i.id desc limit 1
            """)
                .param("order", order.value())
                .query((row, n) -> new PrintedSticker(
                        Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")),
                        Length.mm(row.getDouble("overhang_mm")),
                        crosses(row)))
                .optional();
    }

    private static Optional<Crosses> crosses(ResultSet row) throws SQLException {
        double span = row.getDouble("cross_span_mm");
        return row.wasNull()
                ? Optional.empty()
                : Optional.of(new Crosses(Length.mm(span), Length.mm(row.getDouble("cross_away_mm"))));
    }
}
