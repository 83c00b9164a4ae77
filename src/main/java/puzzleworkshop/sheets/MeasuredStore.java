package puzzleworkshop.sheets;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.measure.Length;

@Repository
class MeasuredStore {

    record Waiting(Outline outline, double uncertaintyMm) {}

    private final JdbcClient jdbc;

    MeasuredStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<MeasuredOutlines.Printer> printers() {
        return jdbc.sql("select printer, line_mm from measuring_print order by at desc, printer")
                .query((row, n) -> new MeasuredOutlines.Printer(row.getString(1), Length.mm(row.getDouble(2))))
                .list();
    }

    void line(String printer, double mm, String who, Instant now) {
        jdbc.sql("""
            insert into measuring_print (printer, line_mm, who, at) values (:printer, :mm, :who, :now)
            on conflict (printer) do update set line_mm = excluded.line_mm, who = excluded.who, at = excluded.at
            """)
                .param("printer", printer)
                .param("mm", mm)
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
    }

    void add(SheetId id, Outline outline, double uncertaintyMm, String who, Instant now) {
        jdbc.sql("""
            insert into sheet_measured (sheet_id, outline, uncertainty_mm, who, at)
            values (:id, :outline, :uncertainty, :who, :now)
            """)
                .param("id", id.value())
                .param("outline", OutlineText.write(outline))
                .param("uncertainty", uncertaintyMm)
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
    }

    Optional<Waiting> unconfirmed(SheetId id) {
        return jdbc.sql("select outline, uncertainty_mm from sheet_measured where sheet_id = :id and confirmed_at is"
                        + " null")
                .param("id", id.value())
                .query((row, n) ->
                        new Waiting(OutlineText.readMended(row.getString("outline")), row.getDouble("uncertainty_mm")))
                .optional();
    }

    Map<SheetId, Outline> unconfirmed() {
        Map<SheetId, Outline> outlines = new HashMap<>();
        jdbc.sql("select sheet_id, outline from sheet_measured where confirmed_at is null")
                .query((RowCallbackHandler)
                        row -> outlines.put(new SheetId(row.getLong(1)), OutlineText.readMended(row.getString(2))));
        return outlines;
    }

    void confirm(SheetId id, String who, Instant now) {
        jdbc.sql("update sheet_measured set confirmed_by = :who, confirmed_at = :now where sheet_id = :id")
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("id", id.value())
                .update();
    }
}
