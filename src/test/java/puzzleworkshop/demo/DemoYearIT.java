package puzzleworkshop.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.access.AsPerson;
import puzzleworkshop.insights.work.FigureRows;
import puzzleworkshop.insights.work.Period;
import puzzleworkshop.insights.work.Topic;
import puzzleworkshop.insights.work.WorkFigures;
import puzzleworkshop.letters.Reminders;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Workshop;

/** The demo workshop's year, done by the program's own commands: what it leaves behind and what it does not. */
@DatabaseTest
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class DemoYearIT {

    @Autowired
    DemoYear year;

    @Autowired
    DemoStock stock;

    @Autowired
    DemoPictures pictures;

    @Autowired
    WorkFigures work;

    @Autowired
    Reminders reminders;

    @Autowired
    SheetRack rack;

    @Autowired
    Workshop workshop;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource database;

    @AfterEach
    void sign_out() {
        AsPerson.nobody();
    }

    @Test
    void a_year_lies_behind_the_workshop_and_its_rack_is_as_it_was() {
        CleanDatabase.now(database);
        stock.boards();
        stock.machine(stock.formerMachine());
        int before = rack.count(RackFilter.inRack());
        List<Double> shares = new ArrayList<>();
        year.play(pictures.begin(), (share, what) -> shares.add(share));
        assertThat(shares).hasSizeGreaterThan(10).isSorted();
        assertThat(rack.count(RackFilter.inRack())).isEqualTo(before);

        AsPerson.owner("Robin");
        LocalDate today = workshop.today();
        Period period = Period.yearUntil(today);
        FigureRows onTime = work.of(Topic.ON_TIME, period);
        double good = sum(onTime, 0);
        double late = sum(onTime, 1);
        assertThat(good + late).as("orders of a year").isBetween(50.0, 110.0);
        assertThat(late / (good + late)).as("late ones").isBetween(0.03, 0.3);
        assertThat(work.of(Topic.REJECTS, period).rows()).as("remakes").isNotEmpty();
        assertThat(work.of(Topic.CUSTOMERS, period).rows()).hasSizeGreaterThan(8);
        assertThat(sum(work.of(Topic.OFFCUTS, period), 0))
                .as("wood from offcuts")
                .isPositive();
        assertThat(reminders.overdue()).as("one that was never paid").hasSize(1);
        Map<Integer, Long> byMonth = jdbc
                .sql("select confirmed_at from customer_order")
                .query((row, n) ->
                        row.getTimestamp(1).toInstant().atZone(workshop.zone()).toLocalDate())
                .list()
                .stream()
                .collect(Collectors.groupingBy(LocalDate::getMonthValue, Collectors.counting()));
        assertThat(byMonth.getOrDefault(12, 0L)).as("December").isGreaterThan(byMonth.getOrDefault(7, 0L));
        assertThat(work.of(Topic.COMPLAINTS, period).rows())
                .as("what complaints have in common")
                .extracting(FigureRows.Row::key)
                .contains("STAGE|CUT");
        assertThat(jdbc.sql("""
            select o.state from complaint c join customer_order o on o.id = c.order_id
            where c.remedy = 'REMAKE'
            """).query(String.class).list())
                .as("one that came back was made again, and is there")
                .isNotEmpty()
                .allMatch(state -> state.equals("CLOSED") || state.equals("HANDED_OVER"));
        assertThat(jdbc.sql("select count(*) from parcel_order where not counts")
                        .query(Integer.class)
                        .single())
                .as("in a parcel of its own each time")
                .isPositive();
        assertThat(jdbc.sql("""
            select count(*) from cutting_job j join cutting_setting s on s.id = j.setting_id
            where j.order_id is not null and j.ended_at is not null and not j.broken_off group by s.machine_id
            """).query(Integer.class).list())
                .as("cuts at the laser that stood there then")
                .hasSize(2)
                .allMatch(cuts -> cuts > 15);
        assertThat(jdbc.sql("select count(distinct (board_material, board_thickness_mm)) from customer_order")
                        .query(Integer.class)
                        .single())
                .as("kinds of board")
                .isGreaterThanOrEqualTo(3);
        assertThat(jdbc.sql("select count(*) from customer_order where tray")
                        .query(Integer.class)
                        .single())
                .as("in a tray")
                .isPositive();
        assertThat(jdbc.sql("select done_at from stage_done")
                        .query((row, n) -> row.getTimestamp(1).toInstant().atZone(workshop.zone()))
                        .list())
                .as("nobody works at night or on a Sunday")
                .allMatch(at -> at.getHour() >= 8 && at.getHour() < 17 && at.getDayOfWeek() != DayOfWeek.SUNDAY);
        assertThat(jdbc.sql("select count(*) from order_history where at > now()")
                        .query(Integer.class)
                        .single())
                .as("nothing lies in the future")
                .isZero();
    }

    @Test
    void the_shelf_was_worth_something_on_every_day_of_the_year_and_costs_what_was_paid_last() {
        CleanDatabase.now(database);
        stock.supplies();
        AsPerson.owner("Robin");
        LocalDate today = workshop.today();
        for (FigureRows.Row month :
                work.of(Topic.STOCK, Period.yearUntil(today)).rows()) {
            assertThat(month.values()[2])
                    .as("supplies, the third figure, at the end of %s", month.label())
                    .isGreaterThan(50);
        }
        assertThat(jdbc.sql("select count(*) from supply_movement where at > now()")
                        .query(Integer.class)
                        .single())
                .as("nothing lies in the future")
                .isZero();
        assertThat(jdbc.sql("""
            select stock / use_per_purchase || ' × ' || round(average_cost * use_per_purchase, 2) from supply_item
            where kind = 'LAMINATE'
            """).query(String.class).single())
                .as("one roll for 27.00, as it was bought four weeks ago")
                .matches("1\\.?0* × 27\\.00");
    }

    /** Whatever day it is opened, its year is over and believable. */
    @Test
    void the_script_fits_every_day_of_a_year() {
        for (LocalDate today = LocalDate.of(2026, 1, 1); today.getYear() < 2028; today = today.plusDays(9)) {
            LocalDate day = today;
            assertThat(PastOrder.yearBefore(today))
                    .as("%s", today)
                    .hasSizeBetween(50, 110)
                    .allMatch(order -> order.handedOver().isBefore(day)
                            && !order.handedOver().isBefore(order.confirmed()))
                    .filteredOn(order -> order.paidAfter().isEmpty())
                    .hasSize(1);
        }
    }

    private static double sum(FigureRows rows, int column) {
        return rows.rows().stream().mapToDouble(row -> row.values()[column]).sum();
    }
}
