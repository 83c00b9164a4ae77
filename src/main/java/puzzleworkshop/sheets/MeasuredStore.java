package puzzleworkshop.sheets;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.OutlineText;

@Repository
class MeasuredStore {

    record Waiting(Outline outline, double uncertaintyMm) {}

    private final JdbcClient jdbc;

    MeasuredStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Double> line() {
        return jdbc.sql("select line_mm from measuring_print")
                .query(Double.class)
                .optional();
    }

    void line(double mm, String who, Instant now) {
        jdbc.sql("""
            insert into measuring_print (line_mm, who, at) values (:mm, :who, :now)
            on conflict (one) do update set line_mm = excluded.line_mm, who = excluded.who, at = excluded.at
            """)
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

    void confirm(SheetId id, String who, Instant now) {
        jdbc.sql("update sheet_measured set confirmed_by = :who, confirmed_at = :now where sheet_id = :id")
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("id", id.value())
                .update();
    }
}
