package puzzleworkshop.insights.work;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.insights.work.FigureRows.Behind;
import puzzleworkshop.insights.work.FigureRows.Row;
import puzzleworkshop.insights.work.FigureRows.Unit;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.workshop.Stage;

/** What happened at the bench: how long orders lay and were worked on, and what went wrong. */
@Component
class BenchFigures {

    private static final String LASER = "LASER";
    private static final String IN_VAIN = "IN_VAIN";
    private static final char BETWEEN = '|';

    private final Query query;

    BenchFigures(Query query) {
        this.query = query;
    }

    /** Of orders handed over in the period: half of them took less than the median, nine of ten less than the other. */
    FigureRows leadTimes(Period period) {
        Map<Stage, Row> found = new EnumMap<>(Stage.class);
        query.list("""
            select s.stage, count(*) as orders,
                percentile_cont(0.5) within group (order by extract(epoch from s.done_at - s.since)) / 86400 as half,
                percentile_cont(0.9) within group (order by extract(epoch from s.done_at - s.since)) / 86400 as most
            from figure_stage s join figure_delivery d on d.order_id = s.order_id
            where d.handed_over_at >= :from and d.handed_over_at < :until and s.since is not null
            group by s.stage
            """, period, Map.of(), row -> {
            Stage stage = Stage.valueOf(row.getString("stage"));
            return found.put(
                    stage,
                    row(
                            stage.name(),
                            Sentence.of(stage.textKey()),
                            row.getDouble("half"),
                            row.getDouble("most"),
                            row.getInt("orders")));
        });
        return new FigureRows(
                Topic.LEAD_TIME,
                Sentence.of("insights.work.first.stage"),
                List.of(
                        DeliveryFigures.column("median", Unit.DAYS, "a"),
                        DeliveryFigures.column("ninety", Unit.DAYS, "b"),
                        DeliveryFigures.column("stages", Unit.COUNT, "")),
                List.copyOf(found.values()),
                false);
    }

    List<Behind> behindLeadTime(Period period, String stage) {
        return query.behind("""
            select d.number, d.customer, extract(epoch from s.done_at - s.since) / 86400 as value
            from figure_stage s join figure_delivery d on d.order_id = s.order_id
            where d.handed_over_at >= :from and d.handed_over_at < :until and s.stage = :stage and s.since is not null
            order by value desc
            """, period, Map.of("stage", stage));
    }

    /** Clocked hours only; a stage that nobody clocks is not there. */
    FigureRows hours(Period period) {
        Map<Stage, Row> found = new EnumMap<>(Stage.class);
        query.list("""
            select s.stage, sum(s.minutes) / 60 as hours, count(distinct s.order_id) as orders,
                sum(s.minutes) / 60 / nullif(sum(d.quantity), 0) as each
            from figure_stage s join figure_delivery d on d.order_id = s.order_id
            where d.handed_over_at >= :from and d.handed_over_at < :until and s.minutes is not null
            group by s.stage
            """, period, Map.of(), row -> {
            Stage stage = Stage.valueOf(row.getString("stage"));
            return found.put(
                    stage,
                    row(
                            stage.name(),
                            Sentence.of(stage.textKey()),
                            row.getDouble("hours"),
                            row.getDouble("each"),
                            row.getInt("orders")));
        });
        List<Row> rows = new ArrayList<>(found.values());
        rows.addAll(query.list(
                """
                select sum(t.laser_minutes) / 60 as hours, count(t.laser_minutes) as orders,
                    sum(t.laser_minutes) / 60 / nullif(sum(t.quantity) filter (where t.laser_minutes is not null), 0) as each
                from order_took t join figure_delivery d on d.order_id = t.order_id
                where d.handed_over_at >= :from and d.handed_over_at < :until
                having count(t.laser_minutes) > 0
                """,
                period,
                Map.of(),
                row -> row(
                        LASER,
                        Sentence.of("insights.work.laser"),
                        row.getDouble("hours"),
                        row.getDouble("each"),
                        row.getInt("orders"))));
        rows.addAll(query.list(
                """
                select sum(minutes_lost) / 60 as hours, count(distinct order_id) as orders from figure_reject
                where happened_at >= :from and happened_at < :until
                having sum(minutes_lost) > 0
                """,
                period,
                Map.of(),
                row -> row(
                        IN_VAIN,
                        Sentence.of("insights.work.in-vain"),
                        row.getDouble("hours"),
                        Double.NaN,
                        row.getInt("orders"))));
        return new FigureRows(
                Topic.HOURS,
                Sentence.of("insights.work.first.stage"),
                List.of(
                        DeliveryFigures.column("hours", Unit.HOURS, "a"),
                        DeliveryFigures.column("hours-each", Unit.HOURS, ""),
                        DeliveryFigures.column("orders", Unit.COUNT, "")),
                rows,
                false);
    }

    List<Behind> behindHours(Period period, String key) {
        return switch (key) {
            case LASER -> query.behind("""
                select d.number, d.customer, t.laser_minutes / 60 as value
                from order_took t join figure_delivery d on d.order_id = t.order_id
                where d.handed_over_at >= :from and d.handed_over_at < :until and t.laser_minutes is not null
                order by value desc
                """, period, Map.of());
            case IN_VAIN -> query.behind("""
                select o.number, t.customer, sum(w.minutes_lost) / 60 as value
                from figure_reject w join order_ref o on o.id = w.order_id join order_took t on t.order_id = w.order_id
                where w.happened_at >= :from and w.happened_at < :until
                group by o.number, t.customer order by value desc
                """, period, Map.of());
            default -> query.behind("""
                select d.number, d.customer, sum(s.minutes) / 60 as value
                from figure_stage s join figure_delivery d on d.order_id = s.order_id
                where d.handed_over_at >= :from and d.handed_over_at < :until and s.stage = :stage
                    and s.minutes is not null
                group by d.number, d.customer order by value desc
                """, period, Map.of("stage", key));
        };
    }

    FigureRows rejects(Period period) {
        List<Row> rows = query.list("""
            select noticed_at, what, count(*) as times, sum(minutes_lost) / 60 as hours,
                coalesce(sum(material_lost) filter (where currency = :currency), 0) as material
            from figure_reject where happened_at >= :from and happened_at < :until
            group by noticed_at, what order by times desc, material desc limit 100
            """, period, Map.of(), row -> {
            Stage stage = Stage.valueOf(row.getString("noticed_at"));
            String what = row.getString("what");
            return new Row(
                    stage.name() + BETWEEN + what,
                    Sentence.of(
                            "insights.work.reject",
                            Sentence.of(stage.textKey()),
                            Sentence.of(Rework.What.valueOf(what).textKey())),
                    new double[] {row.getInt("times"), row.getDouble("hours"), row.getDouble("material")});
        });
        return new FigureRows(
                Topic.REJECTS,
                Sentence.of("insights.work.first.reject"),
                List.of(
                        DeliveryFigures.column("times", Unit.COUNT, "bad"),
                        DeliveryFigures.column("hours-lost", Unit.HOURS, ""),
                        DeliveryFigures.column("material-lost", Unit.MONEY, "")),
                rows,
                false);
    }

    List<Behind> behindReject(Period period, String key) {
        int between = key.indexOf(BETWEEN);
        return query.behind(
                """
                select o.number, t.customer,
                    coalesce(sum(w.material_lost) filter (where w.currency = :currency), 0) as value
                from figure_reject w join order_ref o on o.id = w.order_id join order_took t on t.order_id = w.order_id
                where w.happened_at >= :from and w.happened_at < :until and w.noticed_at = :stage and w.what = :what
                group by o.number, t.customer order by value desc
                """, period, Map.of("stage", key.substring(0, between), "what", key.substring(between + 1)));
    }

    private static Row row(String key, Sentence label, double... values) {
        return new Row(key, label, values);
    }
}
