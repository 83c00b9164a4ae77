package puzzleworkshop.insights;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class InsightsIT {

    @Autowired
    Insights insights;

    @Autowired
    Bench bench;

    @Autowired
    Orders orders;

    @Autowired
    Workshop workshop;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource dataSource;

    private final BenchOrders make;
    private final LocalDate soon = LocalDate.now().plusDays(9);

    InsightsIT(@Autowired BeanFactory beans) {
        this.make = new BenchOrders(beans);
    }

    @BeforeEach
    void clean() {
        CleanDatabase.now(dataSource);
    }

    @Test
    void a_reject_that_was_made_again_costs_what_was_thrown_away_and_the_work_on_it() {
        Order order = make.confirmed("Ada Reed", soon, 12);
        make.bringTo(order.id(), Stage.FINISH);
        bench.wentWrong(
                BookingKey.fresh(),
                order.id(),
                new Rework.Report(
                        Rework.What.MASK_TORN,
                        Stage.MASK,
                        "tape tore",
                        Rework.Board.KEPT,
                        Optional.of(Money.of("3.50", "EUR"))),
                "Robin");
        for (Stage stage : List.of(Stage.MASK, Stage.CUT, Stage.FINISH, Stage.PACK, Stage.HAND_OVER)) {
            assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), stage, "Robin", "tablet")
                            .refused())
                    .isEmpty();
        }
        Outcome outcome = insights.outcome(order.id()).orElseThrow();
        Outcome.Compared rejects = outcome.parts().get(CostPart.REJECTS);
        assertThat(rejects.measured()).isTrue();
        // Masked and cut once in vain, by the standard minutes, at a wage of 24 an hour.
        double minutes = workshop.stageStandards().get(Stage.MASK).hands(1, 12).value()
                + workshop.stageStandards().get(Stage.CUT).hands(1, 12).value();
        BigDecimal expected = new BigDecimal("3.50").add(BigDecimal.valueOf(minutes * 24 / 60));
        assertThat(minutes).isPositive();
        assertThat(rejects.actual().amount()).isEqualByComparingTo(expected.setScale(2, RoundingMode.HALF_UP));
        Money worse = rejects.actual().minus(rejects.reckoned());
        assertThat(outcome.reckonedToEarn().minus(outcome.earned()).sameAs(worse))
                .isTrue();
        assertThat(outcome.actual().plus(outcome.earned()).sameAs(outcome.net()))
                .isTrue();
        assertThat(insights.finishedSince(YearMonth.now())).singleElement().satisfies(finished -> {
            assertThat(finished.mishaps()).isEqualTo(1);
            assertThat(insights.byMonth(List.of(finished), YearMonth.now())
                            .getLast()
                            .orders())
                    .isEqualTo(1);
            assertThat(insights.bySize(List.of(finished)).getFirst().puzzles()).isEqualTo(1);
        });
    }

    @Test
    void the_clock_of_a_failed_attempt_counts_among_the_losses_and_not_twice() {
        Order order = make.confirmed("Ada Reed", soon, 12);
        make.bringTo(order.id(), Stage.MASK);
        jdbc.sql("delete from stage_timer").update();
        jdbc.sql("alter table stage_done disable trigger stage_done_is_only_added_to")
                .update();
        jdbc.sql("update stage_done set minutes = 30 where order_id = :id and stage = 'STICK'")
                .param("id", order.id().value())
                .update();
        jdbc.sql("alter table stage_done enable trigger stage_done_is_only_added_to")
                .update();
        Money before = insights.outcome(order.id()).orElseThrow().actual();
        bench.wentWrong(
                BookingKey.fresh(),
                order.id(),
                new Rework.Report(
                        Rework.What.STUCK_ASKEW, Stage.STICK, "", Rework.Board.KEPT, Optional.of(Money.of("0", "EUR"))),
                "Robin");
        assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.STICK, "Robin", "tablet")
                        .refused())
                .isEmpty();
        Outcome after = insights.outcome(order.id()).orElseThrow();
        // Half an hour lost at 24 an hour; sticking itself was not clocked the second time and stands as reckoned.
        assertThat(after.parts().get(CostPart.REJECTS).actual().amount()).isEqualByComparingTo("12.00");
        Money reckonedRejects = after.parts().get(CostPart.REJECTS).reckoned();
        double standard =
                workshop.stageStandards().get(Stage.STICK).hands(1, 12).value();
        BigDecimal expected =
                before.amount().subtract(reckonedRejects.amount()).add(BigDecimal.valueOf(standard * 24 / 60));
        assertThat(after.actual().amount())
                .isCloseTo(expected, org.assertj.core.data.Offset.offset(new BigDecimal("0.02")));
    }

    @Test
    void clocked_minutes_cost_their_wage_in_place_of_the_standard() {
        Order order = make.confirmed("Ada Reed", soon, 12);
        Outcome before = insights.outcome(order.id()).orElseThrow();
        assertThat(before.isMeasured()).isFalse();
        jdbc.sql(
                        "insert into stage_done (order_id, stage, attempt, done_at, done_by, minutes) values (:id, 'PRINT', 1, now(), 'Robin', 66)")
                .param("id", order.id().value())
                .update();
        Outcome.Compared hands =
                insights.outcome(order.id()).orElseThrow().parts().get(CostPart.HANDS);
        // Standard of printing one puzzle: 4 + 2 minutes; an hour more at a wage of 24 is 24.00 more.
        assertThat(hands.actual().minus(hands.reckoned()).amount()).isEqualByComparingTo("24.00");
    }

    /** A personal shape adds a piece and swallows others: 24 by columns and rows, 21 in the box. */
    @Test
    void pieces_are_those_in_the_box_and_not_columns_times_rows() {
        Order order = make.confirmed("Ada Reed", soon, 12);
        jdbc.sql("update customer_order set pieces = 21 where id = :id")
                .param("id", order.id().value())
                .update();
        assertThat(orders.get(order.id()).puzzle().pattern().grid().pieces()).isEqualTo(24);
        assertThat(jdbc.sql("select pieces from order_took where order_id = :id")
                        .param("id", order.id().value())
                        .query(Integer.class)
                        .single())
                .isEqualTo(21);
        make.bringTo(order.id(), Stage.HAND_OVER);
        assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.HAND_OVER, "Robin", "tablet")
                        .refused())
                .isEmpty();
        assertThat(insights.finishedSince(YearMonth.now()))
                .extracting(FinishedOrder::pieces)
                .containsExactly(21);
    }
}
