package puzzleworkshop.wood;

import java.sql.Date;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;

/** What was asked for, the owner's word about it, and what wood did. */
@Repository
class WoodStore {

    private enum What {
        BOUGHT,
        USED,
        KEPT,
        THROWN
    }

    /** A blank with its kind of board. */
    record Asked(Demand.Blank blank, BoardKindAsked kind) {}

    private final JdbcClient jdbc;

    WoodStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Since the day, oldest first. */
    List<Asked> asked(LocalDate since, ZoneId zone) {
        return jdbc.sql("""
            select (confirmed_at at time zone :zone)::date as day, width_mm, height_mm, material, grade, thickness_mm
            from asked_blank where confirmed_at >= :since order by confirmed_at, width_mm, height_mm
            """)
                .param("zone", zone.getId())
                .param("since", since.atStartOfDay(zone).toOffsetDateTime())
                .query((row, n) -> new Asked(
                        new Demand.Blank(
                                row.getObject("day", Date.class).toLocalDate(),
                                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm"))),
                        new BoardKindAsked(
                                row.getString("material"),
                                row.getString("grade"),
                                Length.mm(row.getDouble("thickness_mm")))))
                .list();
    }

    /** Another text as soon as another order is confirmed or the owner corrects something. */
    String version() {
        return jdbc.sql("""
            select (select count(*) || ' ' || coalesce(max(confirmed_at)::text, '') from asked_blank) || ' '
                || (select count(*) || ' ' || coalesce(max(at)::text, '') from asked_correction)
            """).query(String.class).single();
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

    WoodRules rules() {
        return jdbc.sql("select most_pieces, weeks_ahead, delivery_weeks, service_percent from wood_rule")
                .query((row, n) -> new WoodRules(
                        row.getInt("most_pieces"),
                        row.getInt("weeks_ahead"),
                        row.getInt("delivery_weeks"),
                        row.getDouble("service_percent")))
                .single();
    }

    void save(WoodRules rules) {
        jdbc.sql("""
            update wood_rule set most_pieces = :room, weeks_ahead = :ahead, delivery_weeks = :delivery,
                service_percent = :service
            """)
                .param("room", rules.mostPieces())
                .param("ahead", rules.weeksAhead())
                .param("delivery", rules.deliveryWeeks())
                .param("service", rules.servicePercent())
                .update();
    }

    /** By month, oldest first; months without wood are left out. */
    List<MonthOfWood> months(YearMonth since, ZoneId zone, Currency currency) {
        Map<YearMonth, Map<What, double[]>> months = new TreeMap<>();
        jdbc.sql("""
            select to_char(at at time zone :zone, 'YYYY-MM') as month, what, sum(area_mm2) as area,
                   coalesce(sum(cost) filter (where currency = :currency), 0) as cost
            from wood_moved where at >= :since group by 1, 2 order by 1
            """)
                .param("zone", zone.getId())
                .param("currency", currency.getCurrencyCode())
                .param("since", since.atDay(1).atStartOfDay(zone).toOffsetDateTime())
                .query((row, n) -> months.computeIfAbsent(
                                YearMonth.parse(row.getString("month")), month -> new EnumMap<>(What.class))
                        .put(
                                What.valueOf(row.getString("what")),
                                new double[] {row.getDouble("area"), row.getDouble("cost")}))
                .list();
        return months.entrySet().stream()
                .map(month -> new MonthOfWood(
                        month.getKey(),
                        area(month.getValue(), What.BOUGHT),
                        area(month.getValue(), What.USED),
                        area(month.getValue(), What.KEPT),
                        area(month.getValue(), What.THROWN),
                        Money.of(
                                java.math.BigDecimal.valueOf(
                                        month.getValue().getOrDefault(What.BOUGHT, new double[2])[1]),
                                currency)))
                .toList();
    }

    private static Area area(Map<What, double[]> month, What what) {
        return Area.mm2(month.getOrDefault(what, new double[2])[0]);
    }
}
