package puzzleworkshop.insights.work;

import java.time.LocalDate;
import java.time.Month;
import java.time.format.TextStyle;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Texts;
import puzzleworkshop.insights.work.FigureRows.Behind;
import puzzleworkshop.insights.work.FigureRows.Column;
import puzzleworkshop.insights.work.FigureRows.Row;
import puzzleworkshop.insights.work.FigureRows.Unit;
import puzzleworkshop.measure.Sentence;

/** What was handed over: whether in time, to whom, and in which months of which years. */
@Component
class DeliveryFigures {

    private static final int YEARS = 3;
    private static final int MOST_CUSTOMERS = 50;
    private static final int MONTHS = 12;
    private static final double PERCENT = 100;

    private final Query query;

    DeliveryFigures(Query query) {
        this.query = query;
    }

    private record Week(LocalDate monday, int all, int late, double daysLate) {}

    /** Orders without a promised day are no question of being on time. Weeks as ISO 8601 counts them, empty ones too. */
    FigureRows onTime(Period period) {
        Map<LocalDate, Week> found = new HashMap<>();
        query.list(
                        """
                        select date_trunc('week', handed_over_at at time zone :zone)::date as monday, count(*) as all_of_them,
                            count(*) filter (where (handed_over_at at time zone :zone)::date > promised_on) as late,
                            coalesce(avg((handed_over_at at time zone :zone)::date - promised_on)
                                filter (where (handed_over_at at time zone :zone)::date > promised_on), 0) as days_late
                        from figure_delivery
                        where handed_over_at >= :from and handed_over_at < :until and promised_on is not null
                        group by monday
                        """,
                        period,
                        Map.of(),
                        row -> new Week(
                                row.getObject("monday", LocalDate.class),
                                row.getInt("all_of_them"),
                                row.getInt("late"),
                                row.getDouble("days_late")))
                .forEach(week -> found.put(week.monday(), week));
        List<Row> rows = new ArrayList<>();
        LocalDate first = found.keySet().stream().min(LocalDate::compareTo).orElse(period.to());
        for (LocalDate monday = first; !monday.isAfter(period.to()); monday = monday.plusWeeks(1)) {
            Week week = found.getOrDefault(monday, new Week(monday, 0, 0, 0));
            rows.add(new Row(
                    week.all() == 0 ? "" : monday.toString(),
                    Sentence.of("insights.work.week", monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR), monday),
                    new double[] {
                        week.all() - week.late(),
                        week.late(),
                        week.all() == 0 ? Double.NaN : PERCENT * (week.all() - week.late()) / week.all(),
                        week.late() == 0 ? Double.NaN : week.daysLate()
                    }));
        }
        return new FigureRows(
                Topic.ON_TIME,
                Sentence.of("insights.work.first.week"),
                List.of(
                        column("on-time", Unit.COUNT, "good"),
                        column("late", Unit.COUNT, "bad"),
                        column("share", Unit.PERCENT, ""),
                        column("days-late", Unit.DAYS, "")),
                rows,
                true);
    }

    List<Behind> behindWeek(Period period, String monday) {
        LocalDate first = LocalDate.parse(monday);
        LocalDate from = first.isBefore(period.from()) ? period.from() : first;
        LocalDate to = first.plusDays(6).isAfter(period.to()) ? period.to() : first.plusDays(6);
        return query.behind("""
            select number, customer, (handed_over_at at time zone :zone)::date - promised_on as value
            from figure_delivery
            where handed_over_at >= :from and handed_over_at < :until and promised_on is not null
            order by value desc, number
            """, new Period(from, to), Map.of());
    }

    FigureRows customers(Period period) {
        List<Row> rows = query.list("""
            select customer_id, max(customer) as customer, count(*) as orders, sum(quantity) as puzzles,
                sum(sold) filter (where currency = :currency) as sold,
                100.0 * count(*) filter (where (handed_over_at at time zone :zone)::date <= promised_on)
                    / nullif(count(promised_on), 0) as on_time
            from figure_delivery where handed_over_at >= :from and handed_over_at < :until
            group by customer_id order by sold desc nulls last, orders desc limit 50
            """, period, Map.of(), row -> {
            double onTime = row.getDouble("on_time");
            boolean none = row.wasNull();
            return new Row(row.getString("customer_id"), row.getString("customer"), new double[] {
                row.getDouble("sold"), row.getInt("orders"), row.getInt("puzzles"), none ? Double.NaN : onTime
            });
        });
        return new FigureRows(
                Topic.CUSTOMERS,
                Sentence.of("insights.work.first.customer", MOST_CUSTOMERS),
                List.of(
                        column("sold", Unit.MONEY, "a"),
                        column("orders", Unit.COUNT, ""),
                        column("puzzles", Unit.COUNT, ""),
                        column("share", Unit.PERCENT, "")),
                rows,
                false);
    }

    List<Behind> behindCustomer(Period period, long customer) {
        return query.behind("""
            select number, customer, sold as value from figure_delivery
            where handed_over_at >= :from and handed_over_at < :until and customer_id = :customer and currency = :currency
            order by handed_over_at desc
            """, period, Map.of("customer", customer));
    }

    private record Month3(int year, int month, int orders, double sold) {}

    /** January to December of this year and those before it, beside each other. */
    FigureRows months(LocalDate until) {
        int last = until.getYear();
        Map<Integer, Month3> found = new HashMap<>();
        query.list(
                        """
                        select extract(year from handed_over_at at time zone :zone)::int as year,
                            extract(month from handed_over_at at time zone :zone)::int as month, count(*) as orders,
                            coalesce(sum(sold) filter (where currency = :currency), 0) as sold
                        from figure_delivery where handed_over_at >= :from and handed_over_at < :until group by year, month
                        """,
                        new Period(LocalDate.of(last - YEARS + 1, 1, 1), LocalDate.of(last, 12, 31)),
                        Map.of(),
                        row -> new Month3(
                                row.getInt("year"), row.getInt("month"), row.getInt("orders"), row.getDouble("sold")))
                .forEach(month -> found.put(month.year() * MONTHS + month.month(), month));
        int first = found.values().stream().mapToInt(Month3::year).min().orElse(last);
        int[] years = IntStream.rangeClosed(first, last).toArray();
        List<Column> columns = new ArrayList<>();
        String[] looks = {"c", "b", "a"};
        for (int i = 0; i < years.length; i++) {
            columns.add(new Column(
                    Sentence.of("insights.work.column.sold-in", String.valueOf(years[i])),
                    Unit.MONEY,
                    looks[i + YEARS - years.length]));
        }
        for (int year : years) {
            columns.add(
                    new Column(Sentence.of("insights.work.column.orders-in", String.valueOf(year)), Unit.COUNT, ""));
        }
        columns.add(column("change", Unit.PERCENT, ""));
        // a month that is not over says nothing beside a whole one
        int running = last == query.today().getYear() ? query.today().getMonthValue() : 0;
        List<Row> rows = new ArrayList<>();
        for (int month = 1; month <= MONTHS; month++) {
            rows.add(month(month, years, found, running));
        }
        return new FigureRows(Topic.MONTHS, Sentence.of("insights.work.first.month"), columns, rows, false);
    }

    private static Row month(int month, int[] years, Map<Integer, Month3> found, int running) {
        double[] values = new double[2 * years.length + 1];
        Arrays.fill(values, Double.NaN);
        for (int i = 0; i < years.length; i++) {
            Month3 of = found.get(years[i] * MONTHS + month);
            values[i] = of == null ? 0 : of.sold();
            values[years.length + i] = of == null ? 0 : of.orders();
        }
        int last = years.length - 1;
        if (last > 0 && month != running && values[last - 1] > 0 && values[last] > 0) {
            values[2 * years.length] = PERCENT * (values[last] / values[last - 1] - 1);
        }
        boolean any = Arrays.stream(values, years.length, 2 * years.length).anyMatch(orders -> orders > 0);
        return new Row(
                any ? String.valueOf(month) : "",
                Month.of(month).getDisplayName(TextStyle.SHORT, Texts.LOCALE),
                values);
    }

    List<Behind> behindMonth(int month) {
        int last = query.today().getYear();
        return query.behind(
                """
                select number, customer, sold as value from figure_delivery
                where handed_over_at >= :from and handed_over_at < :until and currency = :currency
                    and extract(month from handed_over_at at time zone :zone) = :month
                order by handed_over_at desc
                """,
                new Period(LocalDate.of(last - YEARS + 1, 1, 1), LocalDate.of(last, 12, 31)),
                Map.of("month", month));
    }

    Optional<LocalDate> firstDay() {
        return query.list(
                        """
                        select (min(handed_over_at) at time zone :zone)::date as first from figure_delivery
                        where handed_over_at >= :from and handed_over_at < :until
                        """,
                        new Period(LocalDate.of(2000, 1, 1), query.today().plusDays(1)),
                        Map.of(),
                        row -> Optional.ofNullable(row.getObject("first", LocalDate.class)))
                .getFirst();
    }

    static Column column(String name, Unit unit, String look) {
        return new Column(Sentence.of("insights.work.column." + name), unit, look);
    }
}
