package puzzleworkshop.insights;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
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
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.PieceOrders;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.pattern.judged.LostPiece;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
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

    private final BeanFactory beans;
    private final BenchOrders make;
    private final LocalDate soon = LocalDate.now().plusDays(9);

    InsightsIT(@Autowired BeanFactory beans) {
        this.beans = beans;
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
        assertThat(insights.since(YearMonth.now()).finished()).singleElement().satisfies(finished -> {
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
        jdbc.sql("insert into stage_done (order_id, stage, attempt, done_at, done_by, minutes) values (:id,"
                        + " 'PRINT', 1, now(), 'Robin', 66)")
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
        assertThat(insights.since(YearMonth.now()).finished())
                .extracting(FinishedOrder::pieces)
                .containsExactly(21);
    }

    /** A month that is over does not change because a puzzle of it came back: sold and earned stay where the invoice is. */
    @Test
    void an_order_made_again_after_a_return_stays_in_the_month_in_which_it_was_first_handed_over() {
        Order order = make.confirmed("Ada Reed", soon, 12);
        make.bringTo(order.id(), Stage.HAND_OVER);
        handOver(order);
        YearMonth before = YearMonth.now().minusMonths(2);
        handedOverAt(order, before.atDay(12));
        bench.wentWrong(
                BookingKey.fresh(),
                order.id(),
                new Rework.Report(
                        Rework.What.RETURNED,
                        Stage.PRINT,
                        "charred",
                        Rework.Board.KEPT,
                        Optional.of(Money.of("2", "EUR"))),
                "Robin");
        assertThat(months()).as("while it is made again").containsExactly(before);
        make.holdBoard(order);
        make.bringTo(order.id(), Stage.HAND_OVER);
        handOver(order);
        assertThat(months()).as("after it was handed over once more").containsExactly(before);
        assertThat(insights.since(before.plusMonths(1)).finished()).isEmpty();
    }

    @Test
    void a_piece_made_again_for_nothing_costs_the_order_that_it_belongs_to_and_counts_once() {
        Order order = make.confirmed("Ada Reed", soon, 12);
        make.bringTo(order.id(), Stage.HAND_OVER);
        handOver(order);
        Money alone = insights.outcome(order.id()).orElseThrow().actual();
        Order free = piece(order, true);
        assertThat(insights.outcome(order.id()).orElseThrow().actual())
                .as("a quote costs nothing")
                .isEqualTo(alone);
        beans.getBean(Confirmations.class).confirm(free.id(), "Robin");
        Outcome piece = insights.outcome(free.id()).orElseThrow();
        Outcome whole = insights.outcome(order.id()).orElseThrow();
        assertThat(piece.net().isZero()).isTrue();
        assertThat(piece.actual().isPositive()).isTrue();
        assertThat(whole.again()).singleElement().satisfies(again -> {
            assertThat(again.order().number()).isEqualTo(free.number());
            assertThat(again.cost()).isEqualTo(piece.actual());
        });
        assertThat(whole.actual()).isEqualTo(alone.plus(piece.actual()));
        assertThat(whole.earned()).isEqualTo(whole.net().minus(whole.actual()));

        // made and handed over it counts by what it took, and with the order alone: a month does not bear it twice
        made(free);
        Money took = insights.outcome(free.id()).orElseThrow().actual();
        assertThat(insights.since(YearMonth.now()).finished()).singleElement().satisfies(finished -> {
            assertThat(finished.id()).isEqualTo(order.id());
            assertThat(finished.outcome().actual()).isEqualTo(alone.plus(took));
        });
    }

    @Test
    void a_piece_that_the_customer_pays_for_is_an_order_like_any_other() {
        Order order = make.confirmed("Ada Reed", soon, 12);
        make.bringTo(order.id(), Stage.HAND_OVER);
        handOver(order);
        Order paid = piece(order, false);
        beans.getBean(Confirmations.class).confirm(paid.id(), "Robin");
        made(paid);
        assertThat(insights.outcome(order.id()).orElseThrow().again()).isEmpty();
        assertThat(insights.since(YearMonth.now()).finished())
                .extracting(FinishedOrder::id)
                .containsExactlyInAnyOrder(order.id(), paid.id());
    }

    private Order piece(Order of, boolean free) {
        Machines machines = beans.getBean(Machines.class);
        if (machines.standard().isEmpty()) {
            machines.save(Machine.usual("Laser", workshop.currency()));
        }
        beans.getBean(SheetRack.class)
                .add(
                        Outline.rectangle(Size.mm(140, 120)),
                        BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                        Money.of("0.40", "EUR"),
                        "Robin");
        LostPiece.Today today = LostPiece.Today.withKerf(of.puzzle().pattern().kerf());
        return beans.getBean(PieceOrders.class)
                .quote(BookingKey.fresh(), new PieceOrders.Wanted(of.id(), 5, today, free), "Robin");
    }

    private void handOver(Order order) {
        assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.HAND_OVER, "Robin", "tablet")
                        .refused())
                .isEmpty();
    }

    /** Without the bench, which asks for a record of the cut. */
    private void made(Order order) {
        for (Stage stage : Stage.values()) {
            orders.completeStage(order.id(), stage, "Robin");
        }
    }

    private void handedOverAt(Order order, LocalDate day) {
        jdbc.sql("alter table stage_done disable trigger stage_done_is_only_added_to")
                .update();
        jdbc.sql("update stage_done set done_at = :at where order_id = :id and stage = 'HAND_OVER'")
                .param("at", day.atTime(12, 0).atOffset(ZoneOffset.UTC))
                .param("id", order.id().value())
                .update();
        jdbc.sql("alter table stage_done enable trigger stage_done_is_only_added_to")
                .update();
        jdbc.sql("update customer_order set handed_over_at = :at where id = :id")
                .param("at", day.atTime(12, 0).atOffset(ZoneOffset.UTC))
                .param("id", order.id().value())
                .update();
    }

    private List<YearMonth> months() {
        return insights.since(YearMonth.now().minusMonths(11)).finished().stream()
                .map(one -> YearMonth.from(one.finished().atZone(workshop.zone())))
                .toList();
    }
}
