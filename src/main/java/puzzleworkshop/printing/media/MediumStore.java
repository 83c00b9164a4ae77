package puzzleworkshop.printing.media;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.supplies.SupplyId;

@Repository
class MediumStore {

    private final JdbcClient jdbc;

    MediumStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<PrintMedium> media() {
        return jdbc.sql("select * from print_medium where not retired order by usual desc, kind desc, width_mm, id")
                .query(MediumStore::medium)
                .list();
    }

    Optional<PrintMedium> find(long id) {
        return jdbc.sql("select * from print_medium where id = :id")
                .param("id", id)
                .query(MediumStore::medium)
                .optional();
    }

    long add(PrintMedium medium) {
        return facts(medium, jdbc.sql("""
                insert into print_medium (name, kind, width_mm, height_mm, margin_mm, gap_mm, sticker_item_id, laminate_item_id, usual)
                values (:name, :kind, :width, :height, :margin, :gap, :sticker, :laminate, :usual)
                returning id
                """)).query(Long.class).single();
    }

    void change(long id, PrintMedium medium) {
        facts(medium, jdbc.sql("""
                update print_medium set name = :name, kind = :kind, width_mm = :width, height_mm = :height, margin_mm = :margin,
                    gap_mm = :gap, sticker_item_id = :sticker, laminate_item_id = :laminate, usual = :usual
                where id = :id
                """)).param("id", id).update();
    }

    void noLongerUsual() {
        jdbc.sql("update print_medium set usual = false where usual").update();
    }

    void retire(long id) {
        jdbc.sql("update print_medium set retired = true, usual = false where id = :id")
                .param("id", id)
                .update();
    }

    private static JdbcClient.StatementSpec facts(PrintMedium medium, JdbcClient.StatementSpec sql) {
        return sql.param("name", medium.name().strip())
                .param("kind", medium.kind().name())
                .param("width", medium.size().width().mm())
                .param("height", medium.size().height().mm())
                .param("margin", medium.margin().mm())
                .param("gap", medium.gap().mm())
                .param("sticker", medium.sticker().map(SupplyId::value).orElse(null))
                .param("laminate", medium.laminate().map(SupplyId::value).orElse(null))
                .param("usual", medium.usual());
    }

    private static PrintMedium medium(ResultSet row, int number) throws SQLException {
        return new PrintMedium(
                Optional.of(row.getLong("id")),
                row.getString("name"),
                PrintMedium.Kind.valueOf(row.getString("kind")),
                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")),
                Length.mm(row.getDouble("margin_mm")),
                Length.mm(row.getDouble("gap_mm")),
                supply(row, "sticker_item_id"),
                supply(row, "laminate_item_id"),
                row.getBoolean("usual"));
    }

    private static Optional<SupplyId> supply(ResultSet row, String column) throws SQLException {
        long id = row.getLong(column);
        return row.wasNull() ? Optional.empty() : Optional.of(new SupplyId(id));
    }
}
