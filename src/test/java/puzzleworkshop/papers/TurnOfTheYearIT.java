package puzzleworkshop.papers;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.insights.FinishedOrder;
import puzzleworkshop.insights.Insights;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.history.HistoryLine;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.TestClock;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.WorkshopProfile;

/** What the calendar does to the program: a year ends, the clocks are changed, time goes by. The tests' clock is set. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class TurnOfTheYearIT {

    /** Its summer time begins on 28 March 2027 at 02:00 (Directive 2000/84/EC: the last Sunday in March, 01:00 UTC). */
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    @Autowired
    Workshop workshop;

    @Autowired
    Orders orders;

    @Autowired
    Invoices invoices;

    @Autowired
    WeekPlan plan;

    @Autowired
    Bench bench;

    @Autowired
    Insights insights;

    @Autowired
    Formatter formatter;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    BeanFactory beans;

    private SoldOrders sold;
    private BenchOrders make;

    @BeforeEach
    void in_a_zone_that_is_not_the_servers() {
        sold = new SoldOrders(beans);
        make = new BenchOrders(beans);
        WorkshopProfile old = workshop.profile();
        workshop.save(WorkshopProfile.named("Birch & Beam", old.currency(), old.units(), BERLIN));
    }

    private static void itIs(String local) {
        TestClock.set(LocalDateTime.parse(local).atZone(BERLIN).toInstant());
    }

    @Test
    void orders_and_invoices_are_numbered_by_the_year_at_the_workshop_and_begin_anew_with_it() {
        // 23:30 UTC of the same day is after midnight at the workshop.
        TestClock.set(Instant.parse("2028-12-31T22:30:00Z"));
        Order last = sold.confirmed("Ada Reed", 1);
        Invoice lastPaper = invoices.issue(BookingKey.fresh(), last.id(), "mara");
        TestClock.set(Instant.parse("2028-12-31T23:30:00Z"));
        Order first = sold.confirmed("Tom Reed", 1);
        Invoice firstPaper = invoices.issue(BookingKey.fresh(), first.id(), "mara");
        assertThat(last.number()).isEqualTo("2028-0001");
        assertThat(first.number()).isEqualTo("2029-0001");
        assertThat(lastPaper.issuedOn()).isEqualTo(LocalDate.of(2028, 12, 31));
        assertThat(firstPaper.issuedOn()).isEqualTo(LocalDate.of(2029, 1, 1));
        assertThat(lastPaper.number()).contains("2028");
        assertThat(firstPaper.number())
                .contains("2029")
                .endsWith(lastPaper.number().substring(lastPaper.number().length() - 4));
        assertThat(invoices.issued(LocalDate.of(2029, 1, 1), LocalDate.of(2029, 12, 31)))
                .extracting(Invoice::number)
                .containsExactly(firstPaper.number());
    }

    @Test
    void a_line_of_the_history_says_its_year_once_it_is_old_and_so_does_a_day_within_it() {
        itIs("2026-12-03T09:30:00");
        Order order = sold.quote("Ada Reed", 1, false, Percent.ZERO);
        orders.confirm(order.id(), LocalDate.of(2026, 12, 17), "mara");
        HistoryLine line = confirmed(order.id());
        assertThat(formatter.moment(line.at())).isEqualTo("Thu 3 Dec, 09:30");
        assertThat(formatter.say(line.what())).contains("Thu 17 Dec").doesNotContain("2026");
        itIs("2027-01-05T09:30:00");
        assertThat(formatter.moment(confirmed(order.id()).at())).isEqualTo("Thu 3 Dec, 09:30");
        itIs("2028-12-03T09:30:00");
        assertThat(formatter.moment(confirmed(order.id()).at())).isEqualTo("Thu 3 Dec 2026, 09:30");
        assertThat(formatter.say(confirmed(order.id()).what())).contains("Thu 17 Dec 2026");
    }

    private HistoryLine confirmed(OrderId order) {
        return orders.history(order).stream()
                .filter(line -> line.what().key().equals("orders.history.confirmed"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void in_the_night_without_two_o_clock_the_clock_at_the_bench_counts_the_minutes_that_went_by() {
        itIs("2027-03-28T01:30:00");
        Order order = make.confirmed("Ada Reed", LocalDate.of(2027, 4, 20), 10);
        bench.start(order.id(), Stage.PRINT, "Robin");
        itIs("2027-03-28T03:10:00");
        assertThat(plan.today()).isEqualTo(LocalDate.of(2027, 3, 28));
        bench.stop(order.id(), "Robin");
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.PRINT, "Robin", "tablet");
        double minutes = jdbc.sql("select minutes from stage_done where order_id = :order and stage = 'PRINT'")
                .param("order", order.id().value())
                .query(Double.class)
                .single();
        assertThat(minutes).as("from 01:30 to 03:10 on that day").isCloseTo(40, Offset.offset(0.5));
    }

    @Test
    void the_day_without_two_o_clock_and_the_day_with_two_of_them_are_planned_like_others() {
        for (String morning : List.of("2027-03-26T09:00:00", "2027-10-29T09:00:00")) {
            itIs(morning);
            Order order = make.confirmed(
                    "Ada Reed", LocalDate.parse(morning.substring(0, 10)).plusDays(14), 10);
            WeekPlan.Entry entry = plan.now().of(order.id()).orElseThrow();
            assertThat(entry.outlook().isLate()).as(morning).isFalse();
            assertThat(entry.outlook().finish()).as(morning).isAfter(LocalDateTime.parse(morning));
        }
    }

    @Test
    void a_promise_becomes_late_by_nothing_but_time() {
        itIs("2027-06-01T07:00:00");
        Order order = make.confirmed("Ada Reed", LocalDate.of(2027, 6, 15), 10);
        assertThat(isLate(order)).isFalse();
        itIs("2027-06-14T07:00:00");
        WeekPlan.Standing eve = plan.now();
        assertThat(eve.today()).isEqualTo(LocalDate.of(2027, 6, 14));
        itIs("2027-06-16T07:00:00");
        assertThat(plan.now().today()).isEqualTo(LocalDate.of(2027, 6, 16));
        assertThat(isLate(order)).as("the day after the one promised").isTrue();
    }

    private boolean isLate(Order order) {
        return plan.now().of(order.id()).orElseThrow().outlook().isLate();
    }

    @Test
    void an_order_two_years_old_is_found_and_shown_with_its_year_and_is_in_no_figures_of_this_year() {
        itIs("2027-02-01T08:00:00");
        Order order = make.confirmed("Ada Reed", LocalDate.of(2027, 2, 20), 10);
        itIs("2027-02-10T08:00:00");
        make.bringTo(order.id(), Stage.CUT);
        jdbc.sql("update customer_order set next_stage = 'HAND_OVER' where id = :id")
                .param("id", order.id().value())
                .update();
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.HAND_OVER, "Robin", "tablet");
        itIs("2029-02-15T08:00:00");
        Order old = orders.findByNumber(order.number()).orElseThrow();
        assertThat(formatter.day(old.promised().orElseThrow())).isEqualTo("Sat 20 Feb 2027");
        assertThat(insights.since(insights.thisMonth().minusMonths(11)).finished())
                .extracting(FinishedOrder::number)
                .doesNotContain(order.number());
        assertThat(insights.since(YearMonth.of(2027, 2)).finished())
                .extracting(FinishedOrder::number)
                .contains(order.number());
        assertThat(plan.now().of(order.id())).isEqualTo(Optional.empty());
        assertThat(invoices.issue(BookingKey.fresh(), order.id(), "mara").issuedOn())
                .as("the day it is, not the day of the order")
                .isEqualTo(LocalDate.of(2029, 2, 15));
    }
}
