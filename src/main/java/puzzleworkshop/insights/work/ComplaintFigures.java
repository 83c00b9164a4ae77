package puzzleworkshop.insights.work;

import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.insights.work.FigureRows.Behind;
import puzzleworkshop.insights.work.FigureRows.Row;
import puzzleworkshop.insights.work.FigureRows.Unit;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Stage;

/** What the complaints of a period have in common: the stage where they most likely arose, the board, the setting. */
@Component
class ComplaintFigures {

    private static final String STAGE = "STAGE";
    private static final char BETWEEN = '|';

    private final Query query;
    private final RackSettings rack;

    ComplaintFigures(Query query, RackSettings rack) {
        this.query = query;
        this.rack = rack;
    }

    FigureRows inCommon(Period period) {
        List<Row> rows = query.list("""
            select aspect, what, count(*) as times, count(distinct order_id) as orders from figure_complaint
            where reported_at >= :from and reported_at < :until
            group by aspect, what
            order by array_position(array['STAGE', 'BOARD', 'SETTING'], aspect), times desc, what limit 100
            """, period, Map.of(), row -> {
            String aspect = row.getString("aspect");
            String what = row.getString("what");
            Object words =
                    aspect.equals(STAGE) ? Sentence.of(Stage.valueOf(what).textKey()) : rack.inWords(what);
            return new Row(
                    aspect + BETWEEN + what,
                    Sentence.of("insights.work.complaint." + aspect, words),
                    new double[] {row.getInt("times"), row.getInt("orders")});
        });
        return new FigureRows(
                Topic.COMPLAINTS,
                Sentence.of("insights.work.first.complaint"),
                List.of(
                        DeliveryFigures.column("complaints", Unit.COUNT, "bad"),
                        DeliveryFigures.column("orders", Unit.COUNT, "")),
                rows,
                false);
    }

    List<Behind> behind(Period period, String key) {
        int between = key.indexOf(BETWEEN);
        return query.behind(
                """
                select o.number, t.customer, count(*) as value
                from figure_complaint c join order_ref o on o.id = c.order_id join order_took t on t.order_id = c.order_id
                where c.reported_at >= :from and c.reported_at < :until and c.aspect = :aspect and c.what = :what
                group by o.number, t.customer order by value desc, o.number
                """, period, Map.of("aspect", key.substring(0, between), "what", key.substring(between + 1)));
    }
}
