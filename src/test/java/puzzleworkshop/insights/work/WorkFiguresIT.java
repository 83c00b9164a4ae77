package puzzleworkshop.insights.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.StringReader;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import javax.sql.DataSource;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.access.AsPerson;
import puzzleworkshop.insights.work.FigureRows.Row;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainOrders;
import puzzleworkshop.support.TestClock;

/** Figures of small workshops that can be counted by hand. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class WorkFiguresIT {

    private static final Period NOVEMBER = new Period(LocalDate.of(2026, 11, 1), LocalDate.of(2026, 11, 30));

    @Autowired
    WorkFigures work;

    @Autowired
    FigureCsv csv;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource database;

    @BeforeEach
    void an_empty_workshop() {
        CleanDatabase.now(database);
        AsPerson.owner("Robin");
    }

    @AfterEach
    void sign_out() {
        AsPerson.nobody();
    }

    /** Days are noon in UTC, so they are the same day in every zone of Europe. */
    private OrderRef handedOver(String confirmed, String promised, String handedOver, Tick... ticks) {
        OrderRef order = PlainOrders.add(jdbc, 1).getFirst();
        jdbc.sql("""
            update customer_order set state = 'CONFIRMED', next_stage = 'PRINT', confirmed_at = :confirmed::timestamptz,
                promised_on = :promised::date, approved_at = now(), approved_by = 'Ida Norrby'
            where id = :id
            """)
                .param("confirmed", confirmed + "T12:00:00Z")
                .param("promised", promised)
                .param("id", order.id().value())
                .update();
        for (Tick tick : ticks) {
            tick(order, tick);
        }
        jdbc.sql("""
            update customer_order set state = 'HANDED_OVER', next_stage = null, handed_over_at = :over::timestamptz
            where id = :id
            """)
                .param("over", handedOver + "T12:00:00Z")
                .param("id", order.id().value())
                .update();
        return order;
    }

    private record Tick(String stage, String day, double minutes) {}

    private void tick(OrderRef order, Tick tick) {
        tick(order, 1, tick);
    }

    private void tick(OrderRef order, int attempt, Tick tick) {
        jdbc.sql("update customer_order set next_stage = :stage where id = :id")
                .param("id", order.id().value())
                .param("stage", tick.stage())
                .update();
        jdbc.sql("""
            insert into stage_done (order_id, stage, attempt, done_at, done_by, minutes)
            values (:id, :stage, :attempt, :at::timestamptz, 'mara', :minutes)
            """)
                .param("id", order.id().value())
                .param("stage", tick.stage())
                .param("attempt", attempt)
                .param("at", tick.day() + "T12:00:00Z")
                .param("minutes", tick.minutes())
                .update();
    }

    private static Row row(FigureRows rows, String key) {
        return rows.rows().stream()
                .filter(row -> row.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    /** ISO 8601: 2 and 8 November 2026 are Monday and Sunday of week 45, 9 November is Monday of week 46. */
    @Test
    void on_time_is_counted_by_the_week_of_the_hand_over_against_the_promised_day() {
        handedOver("2026-10-20", "2026-11-03", "2026-11-02");
        handedOver("2026-10-20", "2026-11-08", "2026-11-08");
        OrderRef late = handedOver("2026-10-20", "2026-11-03", "2026-11-06");
        handedOver("2026-10-20", "2026-11-09", "2026-11-10");
        FigureRows rows = work.of(Topic.ON_TIME, NOVEMBER);
        assertThat(row(rows, "2026-11-02").values()).containsExactly(2, 1, 200.0 / 3, 3);
        assertThat(row(rows, "2026-11-09").values()).containsExactly(0, 1, 0, 1);
        assertThat(work.behind(Topic.ON_TIME, NOVEMBER, "2026-11-02"))
                .hasSize(3)
                .first()
                .isEqualTo(new FigureRows.Behind(late.number(), "Ida Norrby", 3));
    }

    /** Promised for the 3rd, handed over on the 2nd, complained of on the 20th; printed again two days later, not yet out. */
    @Test
    void what_is_made_again_stays_in_the_week_in_which_it_was_first_handed_over() {
        OrderRef order = handedOver(
                "2026-10-20",
                "2026-11-03",
                "2026-11-02",
                new Tick("PRINT", "2026-10-22", 10),
                new Tick("HAND_OVER", "2026-11-02", 1));
        assertThat(row(work.of(Topic.LEAD_TIME, NOVEMBER), "PRINT").values()).containsExactly(2, 2, 1);
        jdbc.sql("""
            insert into went_wrong (order_id, noticed_at, again_from, what, board_spoiled, minutes_lost,
                laser_minutes_lost, material_lost, currency, happened_at, told_by)
            values (:id, 'HAND_OVER', 'PRINT', 'RETURNED', false, 45, 0, 2.50, 'EUR', '2026-11-20T12:00:00Z', 'mara')
            """).param("id", order.id().value()).update();
        jdbc.sql("""
            update customer_order set state = 'CONFIRMED', next_stage = 'PRINT', handed_over_at = null where id = :id
            """).param("id", order.id().value()).update();
        tick(order, 2, new Tick("PRINT", "2026-11-22", 10));
        FigureRows onTime = work.of(Topic.ON_TIME, NOVEMBER);
        assertThat(row(onTime, "2026-11-02").values()).containsExactly(1, 0, 100, Double.NaN);
        assertThat(row(work.of(Topic.LEAD_TIME, NOVEMBER), "PRINT").values())
                .as("two days each; the days at the customer's are nobody's")
                .containsExactly(2, 2, 2);
        assertThat(jdbc.sql("select handed_over_at::date from order_left where order_id = :id")
                        .param("id", order.id().value())
                        .query(LocalDate.class)
                        .single())
                .isEqualTo(LocalDate.of(2026, 11, 2));

        // sent again in December: three weeks late it never was
        tick(order, 2, new Tick("HAND_OVER", "2026-12-01", 1));
        jdbc.sql("""
            update customer_order set state = 'HANDED_OVER', next_stage = null, handed_over_at = '2026-12-01T12:00:00Z'
            where id = :id
            """).param("id", order.id().value()).update();
        assertThat(row(work.of(Topic.ON_TIME, NOVEMBER), "2026-11-02").values()).containsExactly(1, 0, 100, Double.NaN);
        assertThat(work.behind(
                        Topic.ON_TIME, new Period(LocalDate.of(2026, 12, 1), LocalDate.of(2026, 12, 31)), "2026-11-30"))
                .isEmpty();
    }

    /** Counted by hand: two of the cut, one of print; the setting is known of one. */
    @Test
    void complaints_are_counted_by_what_they_have_in_common_and_open_to_their_orders() {
        OrderRef charred = handedOver("2026-10-20", "2026-11-03", "2026-11-02");
        OrderRef dark = handedOver("2026-10-20", "2026-11-08", "2026-11-08");
        complaint(charred, "CHARRED", "CUT", "Birch 3 mm", "330 mm/min", "2026-11-10");
        complaint(charred, "DOES_NOT_FIT", "CUT", "Birch 3 mm", "", "2026-11-12");
        complaint(dark, "PRINT_FAULT", "PRINT", "Poplar 3 mm", "", "2026-11-12");
        complaint(dark, "PRINT_FAULT", "PRINT", "Poplar 3 mm", "", "2026-12-02");
        FigureRows rows = work.of(Topic.COMPLAINTS, NOVEMBER);
        assertThat(rows.rows())
                .extracting(FigureRows.Row::key)
                .containsExactly(
                        "STAGE|CUT", "STAGE|PRINT", "BOARD|Birch 3 mm", "BOARD|Poplar 3 mm", "SETTING|330 mm/min");
        assertThat(row(rows, "STAGE|CUT").values()).containsExactly(2, 1);
        assertThat(work.behind(Topic.COMPLAINTS, NOVEMBER, "BOARD|Poplar 3 mm"))
                .containsExactly(new FigureRows.Behind(dark.number(), "Ida Norrby", 1));
    }

    @Test
    void the_board_of_a_complaint_is_named_as_people_know_it() {
        OrderRef order = handedOver("2026-10-20", "2026-11-03", "2026-11-02");
        complaint(order, "CHARRED", "CUT", "birch-ply, craft, 3 mm", "", "2026-11-10");
        assertThat(row(work.of(Topic.COMPLAINTS, NOVEMBER), "BOARD|birch-ply, craft, 3 mm")
                        .label())
                .isEqualTo(Sentence.of("insights.work.complaint.BOARD", "Birch ply, craft, 3 mm"));
    }

    private void complaint(OrderRef order, String reason, String stage, String board, String setting, String day) {
        jdbc.sql("""
            insert into complaint (order_id, reported_at, reported_by, by_customer, reason, stage, words, board, setting)
            values (:order, :at::timestamptz, 'Ida', true, :reason, :stage, '', :board, :setting)
            """)
                .param("order", order.id().value())
                .param("at", day + "T12:00:00Z")
                .param("reason", reason)
                .param("stage", stage)
                .param("board", board)
                .param("setting", setting)
                .update();
    }

    /** Median and 90th percentile against Commons Math's type 7 estimate, which is what SQL's percentile_cont means. */
    @Test
    void lead_times_are_from_the_stage_before_to_the_stage() {
        double[] days = {1, 2, 4, 9, 3};
        for (double each : days) {
            LocalDate done = LocalDate.of(2026, 10, 20).plusDays((long) each);
            handedOver(
                    "2026-10-20",
                    "2026-11-20",
                    "2026-11-15",
                    new Tick("PRINT", done.toString(), 10),
                    new Tick("LAMINATE", done.plusDays(2).toString(), 5));
        }
        FigureRows rows = work.of(Topic.LEAD_TIME, NOVEMBER);
        Percentile linear = new Percentile().withEstimationType(Percentile.EstimationType.R_7);
        assertThat(row(rows, "PRINT").values()[0]).isCloseTo(linear.evaluate(days, 50), within(1e-9));
        assertThat(row(rows, "PRINT").values()[1]).isCloseTo(linear.evaluate(days, 90), within(1e-9));
        assertThat(row(rows, "LAMINATE").values()).containsExactly(2, 2, 5);
        assertThat(work.behind(Topic.LEAD_TIME, NOVEMBER, "PRINT").getFirst().value())
                .isEqualTo(9);
    }

    @Test
    void hours_are_those_of_the_clock_and_what_was_worked_in_vain_stands_beside_them() {
        OrderRef order = handedOver(
                "2026-10-20",
                "2026-11-20",
                "2026-11-15",
                new Tick("PRINT", "2026-10-21", 90),
                new Tick("STICK", "2026-10-22", 30));
        jdbc.sql("""
            insert into went_wrong (order_id, noticed_at, again_from, what, board_spoiled, minutes_lost,
                laser_minutes_lost, material_lost, currency, happened_at, told_by)
            values (:id, 'CUT', 'PRINT', 'CHARRED', false, 45, 0, 2.50, 'EUR', '2026-11-05T12:00:00Z', 'mara')
            """).param("id", order.id().value()).update();
        FigureRows hours = work.of(Topic.HOURS, NOVEMBER);
        assertThat(row(hours, "PRINT").values()[0]).isEqualTo(1.5);
        assertThat(row(hours, "STICK").values()[0]).isEqualTo(0.5);
        assertThat(row(hours, "IN_VAIN").values()[0]).isEqualTo(0.75);
        assertThat(work.behind(Topic.HOURS, NOVEMBER, "IN_VAIN").getFirst().number())
                .isEqualTo(order.number());
        FigureRows rejects = work.of(Topic.REJECTS, NOVEMBER);
        assertThat(row(rejects, "CUT|CHARRED").values()).containsExactly(1, 0.75, 2.5);
        assertThat(work.behind(Topic.REJECTS, NOVEMBER, "CUT|CHARRED")
                        .getFirst()
                        .value())
                .isEqualTo(2.5);
    }

    @Test
    void a_reject_booked_in_a_former_currency_opens_to_its_order_like_any_other() {
        OrderRef order = handedOver("2026-10-20", "2026-11-20", "2026-11-15");
        jdbc.sql("""
            insert into went_wrong (order_id, noticed_at, again_from, what, board_spoiled, minutes_lost,
                laser_minutes_lost, material_lost, currency, happened_at, told_by)
            values (:id, 'CUT', 'PRINT', 'CHARRED', false, 45, 0, 2.50, 'CHF', '2026-11-05T12:00:00Z', 'mara')
            """).param("id", order.id().value()).update();
        assertThat(row(work.of(Topic.REJECTS, NOVEMBER), "CUT|CHARRED").values())
                .containsExactly(1, 0.75, 0);
        assertThat(work.behind(Topic.REJECTS, NOVEMBER, "CUT|CHARRED"))
                .containsExactly(new FigureRows.Behind(order.number(), "Ida Norrby", 0));
    }

    private long sheet(
            double width, double height, String cost, Long fromCut, String entered, String state, String since) {
        return jdbc.sql("""
            insert into sheet (outline, width_mm, height_mm, area_mm2, material, grade, nominal_mm, past, grain, cost,
                currency, state, from_cut, entered_at, state_since)
            values ('x', :w, :h, :w * :h, 'birch-ply', 'CRAFT', 3, 'CLEAN', 'NONE', :cost::numeric, 'EUR', :state,
                :cut, :entered::timestamptz, :since::timestamptz) returning id
            """)
                .param("w", width)
                .param("h", height)
                .param("cost", cost)
                .param("cut", fromCut, java.sql.Types.BIGINT)
                .param("entered", entered + "T12:00:00Z")
                .param("state", state)
                .param("since", since + "T12:00:00Z")
                .query(Long.class)
                .single();
    }

    private long cut(
            long sheet,
            OrderRef order,
            double width,
            double height,
            String day,
            String in,
            String blank,
            String scrap) {
        return jdbc.sql("""
            insert into sheet_cut (sheet_id, order_id, x_mm, y_mm, degrees, width_mm, height_mm, offcut_cost, cost_in,
                cost_blank, cost_offcuts, cost_scrapped, currency, who, cut_at)
            values (:sheet, :order, 0, 0, 0, :w, :h, 'FULL', :in::numeric, :blank::numeric,
                :in::numeric - :blank::numeric - :scrap::numeric, :scrap::numeric, 'EUR', 'mara', :at::timestamptz)
            returning id
            """)
                .param("sheet", sheet)
                .param("order", order.id().value())
                .param("w", width)
                .param("h", height)
                .param("in", in)
                .param("blank", blank)
                .param("scrap", scrap)
                .param("at", day + "T12:00:00Z")
                .query(Long.class)
                .single();
    }

    /**
     * A board of 600 × 400 mm (0.24 m², €6) gives a blank of 300 × 200 (0.06 m²) and an offcut of 500 × 200 (0.1 m²); 0.08 m²
     * are lost. The offcut gives a blank of 200 × 200 (0.04 m²), nothing of it is kept: 0.06 m² are lost.
     */
    @Test
    void wood_bought_saved_and_wasted_adds_up_to_what_was_cut() {
        OrderRef first = handedOver("2026-10-20", "2026-11-20", "2026-11-15");
        OrderRef second = handedOver("2026-10-20", "2026-11-20", "2026-11-16");
        long board = sheet(600, 400, "6", null, "2026-11-02", "USED", "2026-11-05");
        long cut = cut(board, first, 300, 200, "2026-11-05", "6", "2", "0.50");
        long offcut = sheet(500, 200, "3.5", cut, "2026-11-05", "USED", "2026-11-10");
        cut(offcut, second, 200, 200, "2026-11-10", "3.5", "2.5", "1");
        FigureRows wood = work.of(Topic.WOOD, NOVEMBER);
        double[] november = row(wood, "2026-11").values();
        assertThat(november).containsExactly(new double[] {0.24, 0.04, 0.14, 6, 2.5, 1.5}, within(1e-9));
        assertThat(row(work.of(Topic.OFFCUTS, NOVEMBER), "2026-11").values())
                .containsExactly(new double[] {0.04, 0.06, 40}, within(1e-9));
        assertThat(work.behind(Topic.WOOD, NOVEMBER, "2026-11"))
                .extracting(FigureRows.Behind::number)
                .containsExactly(first.number(), second.number());
    }

    /** What lay there on the day, not what lies there now. */
    @Test
    void the_stock_is_worth_what_lay_there_at_the_end_of_the_day() {
        sheet(600, 400, "6", null, "2026-09-02", "USED", "2026-11-05");
        sheet(600, 400, "7", null, "2026-11-02", "FREE", "2026-11-02");
        FigureRows rows = work.of(Topic.STOCK, new Period(LocalDate.of(2026, 10, 1), LocalDate.of(2026, 11, 10)));
        assertThat(rows.rows())
                .extracting(Row::label)
                .containsExactly(LocalDate.of(2026, 10, 31), LocalDate.of(2026, 11, 10));
        assertThat(rows.rows().get(0).values()).containsExactly(6, 0, 0, 6);
        assertThat(rows.rows().get(1).values()).containsExactly(7, 0, 0, 7);
    }

    @Test
    void years_stand_beside_each_other_and_customers_by_what_they_bought() throws IOException {
        TestClock.set(Instant.parse("2026-12-18T12:00:00Z"));
        handedOver("2025-10-20", "2025-11-20", "2025-11-15");
        handedOver("2026-10-20", "2026-11-20", "2026-11-15");
        handedOver("2026-10-20", "2026-11-20", "2026-11-16");
        FigureRows months = work.of(Topic.MONTHS, NOVEMBER);
        assertThat(months.rows().get(10).values()).containsExactly(50, 100, 1, 2, 100);
        FigureRows customers = work.of(Topic.CUSTOMERS, NOVEMBER);
        assertThat(customers.rows()).hasSize(2);
        assertThat(work.behind(
                        Topic.CUSTOMERS, NOVEMBER, customers.rows().getFirst().key()))
                .hasSize(1);
        List<CSVRecord> read =
                CSVFormat.RFC4180.parse(new StringReader(csv.of(months))).getRecords();
        assertThat(read).hasSize(13).allMatch(line -> line.size() == 6);
        assertThat(read.get(11).get(2)).isEqualTo("100");
    }

    @Test
    void a_month_that_still_runs_is_not_compared_with_a_whole_one() {
        TestClock.set(Instant.parse("2026-11-18T12:00:00Z"));
        handedOver("2025-10-20", "2025-11-20", "2025-11-15");
        handedOver("2026-10-20", "2026-11-20", "2026-11-16");
        assertThat(work.of(Topic.MONTHS, NOVEMBER).rows().get(10).values()).containsExactly(50, 50, 1, 1, Double.NaN);
    }

    @Test
    void only_an_owner_sees_them() {
        AsPerson.maker("Mel");
        assertThatThrownBy(() -> work.of(Topic.CUSTOMERS, NOVEMBER)).isInstanceOf(Refused.class);
    }

    @Test
    void an_empty_workshop_has_empty_figures() {
        for (Topic topic : Topic.values()) {
            FigureRows rows = work.of(topic, NOVEMBER);
            rows.rows().forEach(row -> assertThat(row.values()).hasSameSizeAs(rows.columns()));
            assertThat(csv.of(rows)).isNotEmpty();
        }
    }
}
