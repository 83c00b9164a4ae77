package puzzleworkshop.wood;

import java.time.YearMonth;
import java.time.ZoneId;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Money;

/** The owner's rules for wood, and what wood did. */
@Repository
class WoodStore {

    private enum What {
        BOUGHT,
        USED,
        KEPT,
        THROWN
    }

    private final JdbcClient jdbc;

    WoodStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
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
