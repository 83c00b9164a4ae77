package puzzleworkshop.wood.asked;

import java.sql.Date;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/** What was asked for, and the owner's word about it. */
@Repository
class AskedStore {

    private final JdbcClient jdbc;

    AskedStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Since the day, oldest first. A block of several counts as so many blanks of the size that one of them has alone, because
     * wood that does not give the block may still give them one by one.
     *
     * @param margin that goes once around a block
     */
    List<AskedBlank> asked(LocalDate since, ZoneId zone, Length margin) {
        double around = 2 * margin.mm();
        List<AskedBlank> asked = new ArrayList<>();
        jdbc.sql("""
            select (confirmed_at at time zone :zone)::date as day, width_mm, height_mm, across, down,
                   material, grade, thickness_mm
            from asked_blank where confirmed_at >= :since order by confirmed_at, width_mm, height_mm
            """)
                .param("zone", zone.getId())
                .param("since", since.atStartOfDay(zone).toOffsetDateTime())
                .query(row -> {
                    int across = row.getInt("across");
                    int down = row.getInt("down");
                    AskedBlank one = new AskedBlank(
                            new Demand.Blank(
                                    row.getObject("day", Date.class).toLocalDate(),
                                    Size.mm(
                                            alone(row.getDouble("width_mm"), across, around),
                                            alone(row.getDouble("height_mm"), down, around))),
                            new BoardKindAsked(
                                    row.getString("material"),
                                    row.getString("grade"),
                                    Length.mm(row.getDouble("thickness_mm"))));
                    asked.addAll(Collections.nCopies(across * down, one));
                });
        return asked;
    }

    /** One of so many side by side, with a margin of its own; in tenths of a millimetre. */
    private static double alone(double side, int count, double around) {
        return count == 1 || side <= around ? side : Math.round(((side - around) / count + around) * 10) / 10.0;
    }

    /** Another text as soon as other blanks are asked for or the owner corrects something. */
    String version() {
        return jdbc.sql("""
            select concat_ws(' ',
                (select concat_ws('/', count(*), max(confirmed_at), sum(width_mm * across + height_mm * down)) from asked_blank),
                (select concat_ws('/', count(*), max(at), sum(per_week)) from asked_correction),
                (select concat_ws('/', count(*), max(at), sum(per_week)) from asked_kind_correction))
            """).query(String.class).single();
    }

    Map<BoardKindAsked, Double> kindCorrections() {
        Map<BoardKindAsked, Double> corrections = new HashMap<>();
        jdbc.sql("select material, grade, thickness_mm, per_week from asked_kind_correction")
                .query((row, n) -> corrections.put(
                        new BoardKindAsked(
                                row.getString("material"),
                                row.getString("grade"),
                                Length.mm(row.getDouble("thickness_mm"))),
                        row.getDouble("per_week")))
                .list();
        return corrections;
    }

    void correct(BoardKindAsked kind, double perWeek, String who, Instant now) {
        jdbc.sql("""
            insert into asked_kind_correction (material, grade, thickness_mm, per_week, who, at)
            values (:material, :grade, :thickness, :rate, :who, :now)
            on conflict (material, grade, thickness_mm) do update set per_week = :rate, who = :who, at = :now
            """)
                .param("material", kind.material())
                .param("grade", kind.grade())
                .param("thickness", kind.thickness().mm())
                .param("rate", perWeek)
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
    }

    void uncorrect(BoardKindAsked kind) {
        jdbc.sql("""
            delete from asked_kind_correction where material = :material and grade = :grade and thickness_mm = :thickness
            """)
                .param("material", kind.material())
                .param("grade", kind.grade())
                .param("thickness", kind.thickness().mm())
                .update();
    }

    Map<Size, Double> corrections() {
        Map<Size, Double> corrections = new HashMap<>();
        jdbc.sql("select width_mm, height_mm, per_week from asked_correction")
                .query((row, n) -> corrections.put(
                        Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")), row.getDouble("per_week")))
                .list();
        return corrections;
    }

    void correct(Size upright, double perWeek, String who, Instant now) {
        jdbc.sql("""
            insert into asked_correction (width_mm, height_mm, per_week, who, at) values (:w, :h, :rate, :who, :now)
            on conflict (width_mm, height_mm) do update set per_week = :rate, who = :who, at = :now
            """)
                .param("w", upright.width().mm())
                .param("h", upright.height().mm())
                .param("rate", perWeek)
                .param("who", who)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
    }

    void uncorrect(Size upright) {
        jdbc.sql("delete from asked_correction where width_mm = :w and height_mm = :h")
                .param("w", upright.width().mm())
                .param("h", upright.height().mm())
                .update();
    }
}
