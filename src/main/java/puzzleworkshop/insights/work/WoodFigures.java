package puzzleworkshop.insights.work;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Texts;
import puzzleworkshop.insights.work.FigureRows.Behind;
import puzzleworkshop.insights.work.FigureRows.Row;
import puzzleworkshop.insights.work.FigureRows.Unit;
import puzzleworkshop.measure.Sentence;

/**
 * What became of the wood: bought as boards, cut into blanks from boards or from offcuts (which is saved), lost beside the
 * blanks or thrown away (which is wasted), and what lay in rack and shelf at a day.
 */
@Component
class WoodFigures {

    private static final double MM2_PER_M2 = 1_000_000;
    private static final double PERCENT = 100;
    private static final int MOST_MONTHS = 120;

    private static final DateTimeFormatter MONTH_AND_YEAR = DateTimeFormatter.ofPattern("MMM yyyy", Texts.LOCALE);

    private final Query query;

    WoodFigures(Query query) {
        this.query = query;
    }

    private record Month(
            double boughtArea,
            double bought,
            double fromBoards,
            double fromOffcuts,
            double saved,
            double wastedArea,
            double wasted) {

        private static final Month NOTHING = new Month(0, 0, 0, 0, 0, 0, 0);
    }

    private Map<YearMonth, Month> months(Period period) {
        Map<YearMonth, Month> months = new HashMap<>();
        query.list(
                """
                select month, sum(bought_area) as bought_area, sum(bought) as bought, sum(boards) as boards,
                    sum(offcuts) as offcuts, sum(saved) as saved, sum(wasted_area) as wasted_area, sum(wasted) as wasted
                from (
                    select date_trunc('month', entered_at at time zone :zone)::date as month, area_mm2 as bought_area,
                        cost as bought, 0 as boards, 0 as offcuts, 0 as saved, 0 as wasted_area, 0 as wasted
                    from figure_sheet
                    where not offcut and state <> 'WITHDRAWN' and entered_at >= :from and entered_at < :until
                        and currency = :currency
                    union all
                    select date_trunc('month', cut_at at time zone :zone)::date, 0, 0,
                        case when from_offcut then 0 else blank_mm2 end, case when from_offcut then blank_mm2 else 0 end,
                        case when from_offcut then cost_blank else 0 end, lost_mm2, cost_scrapped
                    from figure_cut where cut_at >= :from and cut_at < :until and currency = :currency
                    union all
                    select date_trunc('month', state_since at time zone :zone)::date, 0, 0, 0, 0, 0, area_mm2, cost
                    from figure_sheet
                    where state = 'SCRAPPED' and state_since >= :from and state_since < :until and currency = :currency
                ) every
                group by month
                """,
                period,
                Map.of(),
                row -> months.put(
                        YearMonth.from(row.getObject("month", LocalDate.class)),
                        new Month(
                                row.getDouble("bought_area") / MM2_PER_M2,
                                row.getDouble("bought"),
                                row.getDouble("boards") / MM2_PER_M2,
                                row.getDouble("offcuts") / MM2_PER_M2,
                                row.getDouble("saved"),
                                row.getDouble("wasted_area") / MM2_PER_M2,
                                row.getDouble("wasted"))));
        return months;
    }

    FigureRows offcuts(Period period) {
        Map<YearMonth, Month> found = months(period);
        List<Row> rows = new ArrayList<>();
        for (YearMonth month : monthsOf(period, found)) {
            Month of = found.getOrDefault(month, Month.NOTHING);
            double all = of.fromBoards() + of.fromOffcuts();
            rows.add(new Row(all == 0 ? "" : month.toString(), label(month), new double[] {
                of.fromOffcuts(), of.fromBoards(), all == 0 ? Double.NaN : PERCENT * of.fromOffcuts() / all
            }));
        }
        return new FigureRows(
                Topic.OFFCUTS,
                Sentence.of("insights.work.first.month"),
                List.of(
                        DeliveryFigures.column("from-offcuts", Unit.SQUARE_METRES, "a"),
                        DeliveryFigures.column("from-boards", Unit.SQUARE_METRES, "b"),
                        DeliveryFigures.column("offcut-share", Unit.PERCENT, "")),
                rows,
                true);
    }

    FigureRows balance(Period period) {
        Map<YearMonth, Month> found = months(period);
        List<Row> rows = new ArrayList<>();
        for (YearMonth month : monthsOf(period, found)) {
            Month of = found.getOrDefault(month, Month.NOTHING);
            rows.add(new Row(of == Month.NOTHING ? "" : month.toString(), label(month), new double[] {
                of.boughtArea(), of.fromOffcuts(), of.wastedArea(), of.bought(), of.saved(), of.wasted()
            }));
        }
        return new FigureRows(
                Topic.WOOD,
                Sentence.of("insights.work.first.month"),
                List.of(
                        DeliveryFigures.column("bought-area", Unit.SQUARE_METRES, "b"),
                        DeliveryFigures.column("saved-area", Unit.SQUARE_METRES, "a"),
                        DeliveryFigures.column("wasted-area", Unit.SQUARE_METRES, "bad"),
                        DeliveryFigures.column("bought", Unit.MONEY, ""),
                        DeliveryFigures.column("saved", Unit.MONEY, ""),
                        DeliveryFigures.column("wasted", Unit.MONEY, "")),
                rows,
                false);
    }

    /** Orders for which wood was cut in the month, and how many square centimetres. */
    List<Behind> behindMonth(Period period, String month) {
        YearMonth of = YearMonth.parse(month);
        LocalDate from = of.atDay(1).isBefore(period.from()) ? period.from() : of.atDay(1);
        LocalDate to = of.atEndOfMonth().isAfter(period.to()) ? period.to() : of.atEndOfMonth();
        return query.behind("""
            select t.number, t.customer, sum(k.blank_mm2) / 1000000 as value
            from figure_cut k join order_took t on t.order_id = k.order_id
            where k.cut_at >= :from and k.cut_at < :until and k.currency = :currency
            group by t.number, t.customer order by value desc
            """, new Period(from, to), Map.of());
    }

    /** At the end of each month of the period, and of its last day. */
    FigureRows stock(Period period) {
        List<Row> rows = query.list("""
            select day, coalesce(boards, 0) as boards, coalesce(offcuts, 0) as offcuts, coalesce(supplies, 0) as supplies
            from (select distinct least((date_trunc('month', d) + interval '1 month - 1 day')::date,
                                        ((:until::timestamptz at time zone :zone)::date - 1)) as day
                  from generate_series((:from::timestamptz at time zone :zone)::date,
                                       ((:until::timestamptz at time zone :zone)::date - 1), interval '1 day') d) days
            cross join lateral (
                select sum(cost) filter (where not offcut) as boards, sum(cost) filter (where offcut) as offcuts
                from figure_sheet
                where currency = :currency and entered_at < (day + 1)::timestamp at time zone :zone
                    and (state in ('FREE', 'RESERVED') or state_since >= (day + 1)::timestamp at time zone :zone)
            ) wood
            cross join lateral (
                select sum(worth) as supplies from (
                    select distinct on (item_id) worth from figure_supply
                    where currency = :currency and at < (day + 1)::timestamp at time zone :zone
                    order by item_id, number desc) last
            ) shelf
            order by day
            """, period, Map.of(), row -> {
            double boards = row.getDouble("boards");
            double offcuts = row.getDouble("offcuts");
            double supplies = row.getDouble("supplies");
            return new Row("", row.getObject("day", LocalDate.class), new double[] {
                boards, offcuts, supplies, boards + offcuts + supplies
            });
        });
        return new FigureRows(
                Topic.STOCK,
                Sentence.of("insights.work.first.day"),
                List.of(
                        DeliveryFigures.column("stock-boards", Unit.MONEY, "b"),
                        DeliveryFigures.column("stock-offcuts", Unit.MONEY, "a"),
                        DeliveryFigures.column("stock-supplies", Unit.MONEY, "c"),
                        DeliveryFigures.column("stock-all", Unit.MONEY, "")),
                rows,
                true);
    }

    /** From the first month in which something happened to the last of the period. */
    private static List<YearMonth> monthsOf(Period period, Map<YearMonth, Month> found) {
        YearMonth last = YearMonth.from(period.to());
        YearMonth first = found.keySet().stream().min(YearMonth::compareTo).orElse(last);
        List<YearMonth> months = new ArrayList<>();
        for (YearMonth month = first;
                !month.isAfter(last) && months.size() < MOST_MONTHS;
                month = month.plusMonths(1)) {
            months.add(month);
        }
        return months;
    }

    private static String label(YearMonth month) {
        return month.format(MONTH_AND_YEAR);
    }
}
