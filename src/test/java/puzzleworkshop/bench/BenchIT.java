package puzzleworkshop.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.artwork.CameraPicture;
import puzzleworkshop.artwork.PhotoIntakeIT;
import puzzleworkshop.cutting.jobs.CheckItem;
import puzzleworkshop.cutting.jobs.CutEnds;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.Workpiece;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.schedule.Job;
import puzzleworkshop.progress.Progress;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.progress.Running;
import puzzleworkshop.progress.Tick;
import puzzleworkshop.sheets.Cut;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class BenchIT {

    @Autowired
    Progress progress;

    @Autowired
    private Machines machines;

    @Autowired
    private CutJobs cutJobs;

    @Autowired
    CutEnds cutEnds;

    @Autowired
    Bench bench;

    @Autowired
    Orders orders;

    @Autowired
    SheetRack rack;

    @Autowired
    WeekPlan plan;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    BeanFactory beans;

    private BenchOrders make;

    @BeforeEach
    void orders_can_be_made() {
        make = new BenchOrders(beans);
    }

    private Order order() {
        return make.confirmed("Ida Lund", plan.today().plusDays(20), 25);
    }

    @Test
    void of_60_people_who_tick_the_same_stage_at_once_one_wins_and_the_others_see_who_it_was() throws Exception {
        Order order = order();
        CountDownLatch start = new CountDownLatch(1);
        List<Future<Bench.Outcome>> answers = new ArrayList<>();
        try (ExecutorService people = Executors.newFixedThreadPool(60)) {
            for (int i = 0; i < 60; i++) {
                String who = "Maker " + i;
                answers.add(people.submit(() -> {
                    start.await();
                    return bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.PRINT, who, "phone");
                }));
            }
            start.countDown();
        }
        List<Tick> ticks = bench.ticks(order.id());
        assertThat(ticks).hasSize(1);
        int won = 0;
        for (Future<Bench.Outcome> answer : answers) {
            if (answer.get().refused().isEmpty()) {
                won++;
            } else {
                assertThat(answer.get().refused().get(order.id()).key()).isEqualTo("orders.stage.done-already");
                assertThat(answer.get().refused().get(order.id()).arguments())
                        .contains(ticks.getFirst().who());
            }
        }
        assertThat(won).isEqualTo(1);
        assertThat(orders.get(order.id()).next()).contains(Stage.LAMINATE);
    }

    @Test
    void no_stage_is_skipped_not_even_past_the_program() {
        Order order = order();
        Bench.Outcome outcome = bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.CUT, "Robin", "");
        assertThat(outcome.done()).isEmpty();
        assertThat(outcome.refused().get(order.id()).key()).isEqualTo("orders.stage.not-yet");
        assertThat(rack.heldFor(order.id())).hasSize(1);
        assertThatThrownBy(() -> insert(order, Stage.CUT, 1)).isInstanceOf(DataAccessException.class);
        assertThatThrownBy(() -> insert(order, Stage.PRINT, 2)).isInstanceOf(DataAccessException.class);
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.PRINT, "Robin", "");
        assertThatThrownBy(() -> insert(order, Stage.PRINT, 1)).isInstanceOf(DataAccessException.class);
        assertThatThrownBy(() -> jdbc.sql("delete from stage_done").update()).isInstanceOf(DataAccessException.class);
    }

    @Test
    @Transactional
    void with_a_laser_on_the_list_a_cut_is_ticked_only_after_it_was_recorded() {
        machines.save(Machine.usual("Laser", Currency.getInstance("EUR")));
        Order order = order();
        make.bringTo(order.id(), Stage.CUT);
        assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.CUT, "Robin", "")
                        .refused()
                        .get(order.id())
                        .key())
                .isEqualTo("bench.cut.not-recorded");
        CutJob job = cutJobs.prepare(
                new CutJob.Wish(
                        Optional.of(order.id()),
                        order.number(),
                        machines.standard().orElseThrow().id(),
                        Workpiece.clean(order.board()),
                        Optional.empty()),
                "Robin");
        for (CheckItem item : CheckItem.values()) {
            cutJobs.check(job.id(), item, "Robin");
        }
        cutJobs.start(job.id(), "Robin");
        assertThat(bench.running(order.id())).map(Running::stage).contains(Stage.CUT);
        assertThat(bench.recordedCut(order.id())).isEmpty();
        cutEnds.finish(
                BookingKey.fresh(), job.id(), 1, Trial.Finding.of(Trial.Result.THROUGH, 1), Optional.empty(), "Robin");
        assertThat(bench.running(order.id())).isEmpty();
        assertThat(bench.recordedCut(order.id())).isPresent();
        assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.CUT, "Robin", "")
                        .refused())
                .isEmpty();
        // the laser's time lost is what the cut took, not the 25 minutes that were planned
        Rework lost = bench.reckoned(
                order.id(),
                new Rework.Report(Rework.What.CHARRED, Stage.PRINT, "", Rework.Board.KEPT, Optional.empty()));
        assertThat(lost.laserLost().value()).isLessThan(1);
    }

    private void insert(Order order, Stage stage, int attempt) {
        jdbc.sql("insert into stage_done (order_id, stage, attempt, done_at, done_by) values (:o, :s, :a,"
                        + " now(), 'nobody')")
                .param("o", order.id().value())
                .param("s", stage.name())
                .param("a", attempt)
                .update();
    }

    @Test
    void an_order_goes_all_the_way_and_its_board_is_used_up_at_the_cut() {
        Order order = order();
        make.bringTo(order.id(), Stage.CUT);
        assertThat(rack.heldFor(order.id())).hasSize(1);
        for (Stage stage : List.of(Stage.CUT, Stage.FINISH, Stage.PACK, Stage.HAND_OVER)) {
            assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), stage, "Robin", "tablet")
                            .refused())
                    .isEmpty();
        }
        assertThat(rack.heldFor(order.id())).isEmpty();
        assertThat(rack.cutsOf(order.id())).hasSize(1);
        assertThat(orders.get(order.id()).state()).isEqualTo(OrderState.HANDED_OVER);
        assertThat(bench.ticks(order.id())).hasSize(9).allMatch(tick -> tick.attempt() == 1);
    }

    @Test
    void several_are_ticked_together_and_one_that_is_refused_does_not_hold_up_the_others() {
        Order one = order();
        Order waiting = make.waitingForApproval("Tom Reed", plan.today().plusDays(20), 10);
        Order other = order();
        Bench.Outcome outcome = bench.tick(
                BookingKey.fresh(), List.of(one.id(), waiting.id(), other.id()), Stage.PRINT, "Robin", "tablet");
        assertThat(outcome.done()).containsExactlyInAnyOrder(one.id(), other.id());
        assertThat(outcome.refused()).containsOnlyKeys(waiting.id());
    }

    @Test
    void without_a_board_nothing_is_cut() {
        Order order = make.confirmedWithoutBoard("Ida Lund", plan.today().plusDays(20), 10);
        make.bringTo(order.id(), Stage.CUT);
        Bench.Outcome outcome = bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.CUT, "Robin", "");
        assertThat(outcome.refused().get(order.id()).key()).isEqualTo("boards.none-to-cut");
        assertThat(orders.get(order.id()).next()).contains(Stage.CUT);
    }

    @Test
    void a_mistaken_tick_is_taken_back_the_board_is_held_again_and_both_stay_on_record() {
        Order order = order();
        make.bringTo(order.id(), Stage.FINISH);
        assertThat(bench.undoable(order.id())).map(Tick::stage).contains(Stage.CUT);
        bench.undo(BookingKey.fresh(), order.id(), "Robin");
        assertThat(orders.get(order.id()).next()).contains(Stage.CUT);
        assertThat(rack.heldFor(order.id())).hasSize(1);
        assertThat(bench.ticks(order.id()).getLast().undone()).isTrue();
        assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.CUT, "Robin", "")
                        .refused())
                .isEmpty();
        assertThat(bench.ticks(order.id()).getLast().attempt()).isEqualTo(2);
        assertThat(orders.history(order.id()))
                .anyMatch(line -> line.what().key().equals("bench.history.undone"));
    }

    @Test
    void a_clock_runs_in_the_database_and_is_counted_with_the_tick() {
        Order order = order();
        bench.start(order.id(), Stage.PRINT, "Mila");
        Refused twice = catchThrowableOfType(Refused.class, () -> bench.start(order.id(), Stage.PRINT, "Jo"));
        assertThat(twice.sentence().key()).isEqualTo("bench.clock.runs");
        assertThat(twice.sentence().arguments()).contains("Mila");
        jdbc.sql("update stage_timer set started_at = started_at - interval '12 minutes' where order_id = :o")
                .param("o", order.id().value())
                .update();
        assertThat(progress.soFar(List.of(order.id())).get(order.id()).begun()).contains(12);
        assertThat(bench.queue(Stage.PRINT).getFirst().order().id()).isEqualTo(order.id());
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.PRINT, "Mila", "");
        assertThat(bench.ticks(order.id()).getFirst().minutes().orElseThrow().value())
                .isBetween(12.0, 12.5);
        assertThat(bench.running(order.id())).isEmpty();
    }

    @Test
    void what_went_wrong_is_booked_as_loss_and_the_order_is_made_again_from_there() {
        Order order = order();
        make.bringTo(order.id(), Stage.FINISH);
        Cut cut = rack.cutsOf(order.id()).getFirst();
        Rework mishap = bench.wentWrong(
                BookingKey.fresh(),
                order.id(),
                new Rework.Report(Rework.What.CHARRED, Stage.PRINT, "left edge", Rework.Board.KEPT, Optional.empty()),
                "Robin");
        assertThat(mishap.noticedAt()).isEqualTo(Stage.FINISH);
        assertThat(mishap.laserLost().value()).isEqualTo(25);
        assertThat(mishap.handsLost().value()).isGreaterThan(20);
        assertThat(mishap.materialLost().amount())
                .isGreaterThanOrEqualTo(cut.blankCost().rounded().amount());
        assertThat(orders.get(order.id()).next()).contains(Stage.PRINT);
        assertThat(bench.mishaps(order.id())).hasSize(1);
        assertThat(plan.now().of(order.id()).orElseThrow().outlook().waitsFor().map(Job.Wait::forWhat))
                .contains(Job.Wait.For.BOARD);
        make.bringTo(order.id(), Stage.CUT);
        assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.CUT, "Robin", "")
                        .refused()
                        .get(order.id())
                        .key())
                .isEqualTo("boards.none-to-cut");
    }

    @Test
    void a_cut_that_did_not_go_through_is_cut_again_on_the_same_board() {
        Order order = order();
        make.bringTo(order.id(), Stage.FINISH);
        bench.wentWrong(
                BookingKey.fresh(),
                order.id(),
                new Rework.Report(Rework.What.NOT_THROUGH, Stage.CUT, "", Rework.Board.KEPT, Optional.empty()),
                "Robin");
        assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.CUT, "Robin", "")
                        .refused())
                .isEmpty();
        assertThat(rack.cutsOf(order.id())).hasSize(1);
    }

    @Test
    void a_spoiled_blank_costs_the_blank_and_its_remainder_returns_to_the_rack() {
        Order order = order();
        make.bringTo(order.id(), Stage.STICK);
        Sheet board = rack.heldFor(order.id()).getFirst();
        Rework mishap = bench.wentWrong(
                BookingKey.fresh(),
                order.id(),
                new Rework.Report(
                        Rework.What.STUCK_ASKEW,
                        Stage.SHEET_PREP,
                        "glued on aslant",
                        Rework.Board.BLANK_SPOILED,
                        Optional.empty()),
                "Robin");
        Cut cut = rack.cutOf(board.id()).orElseThrow();
        assertThat(mishap.materialLost()).isEqualTo(cut.blankCost().rounded());
        assertThat(mishap.materialLost().compareTo(Money.of("4.00", "EUR"))).isNegative();
        assertThat(cut.offcuts())
                .isNotEmpty()
                .allSatisfy(offcut ->
                        assertThat(rack.find(offcut).orElseThrow().state()).isEqualTo(SheetState.FREE));
        assertThat(cut.cost()).isEqualTo(cut.blankCost().plus(cut.offcutsCost()).plus(cut.scrapped()));
        // the order has no board any more: neither held, nor cut for it
        assertThat(rack.heldFor(order.id())).isEmpty();
        assertThat(rack.cutsOf(order.id())).isEmpty();
        for (Stage again : List.of(Stage.SHEET_PREP, Stage.STICK, Stage.MASK)) {
            bench.tick(BookingKey.fresh(), List.of(order.id()), again, "Robin", "");
        }
        assertThat(bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.CUT, "Robin", "")
                        .refused())
                .containsKey(order.id());
    }

    @Test
    void film_that_settles_holds_up_sticking_and_not_the_board_that_is_prepared_meanwhile() {
        Order order = order();
        make.bringTo(order.id(), Stage.SHEET_PREP);
        assertThat(restsUntil(order, Stage.SHEET_PREP)).isEmpty();
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.SHEET_PREP, "Robin", "test");
        Tick laminated = bench.ticks(order.id()).stream()
                .filter(tick -> tick.stage() == Stage.LAMINATE)
                .findFirst()
                .orElseThrow();
        assertThat(restsUntil(order, Stage.STICK)).contains(laminated.at().plus(Duration.ofHours(12)));
        assertThat(earlyNotes(order)).isEqualTo(1);
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.STICK, "Robin", "test");
        assertThat(earlyNotes(order)).as("one for the ink, one for the film").isEqualTo(2);
    }

    private long earlyNotes(Order order) {
        return orders.history(order.id()).stream()
                .filter(line -> line.what().key().equals("bench.history.early"))
                .count();
    }

    private Optional<Instant> restsUntil(Order order, Stage stage) {
        return bench.queue(stage).stream()
                .filter(waiting -> waiting.order().id().equals(order.id()))
                .findFirst()
                .orElseThrow()
                .restsUntil();
    }

    @Test
    void a_board_found_bad_is_thrown_away_and_the_order_waits_for_another() {
        Order order = order();
        make.bringTo(order.id(), Stage.SHEET_PREP);
        Rework mishap = bench.wentWrong(
                BookingKey.fresh(),
                order.id(),
                new Rework.Report(
                        Rework.What.BOARD_BOWED,
                        Stage.SHEET_PREP,
                        "3 mm bow",
                        Rework.Board.WHOLE_BOARD_SPOILED,
                        Optional.empty()),
                "Robin");
        assertThat(mishap.materialLost()).isEqualTo(Money.of("4.00", "EUR"));
        assertThat(rack.heldFor(order.id())).isEmpty();
        assertThat(orders.get(order.id()).next()).contains(Stage.SHEET_PREP);
        assertThat(plan.now().of(order.id()).orElseThrow().outlook().waitsFor().map(Job.Wait::forWhat))
                .contains(Job.Wait.For.BOARD);
    }

    @Test
    void a_day_is_pinned_and_the_plan_puts_the_cut_there() {
        Order order = order();
        LocalDate day = plan.today().plusDays(8);
        while (day.getDayOfWeek().getValue() > 5) {
            day = day.plusDays(1);
        }
        plan.pin(order.id(), day, "Robin");
        assertThat(plan.now().of(order.id()).orElseThrow().outlook().mainDay()).contains(day);
        plan.unpin(order.id(), "Robin");
        assertThat(plan.now().of(order.id()).orElseThrow().pinned()).isEmpty();
        LocalDate past = plan.today().minusDays(1);
        assertThatThrownBy(() -> plan.pin(order.id(), past, "Robin")).isInstanceOf(Refused.class);
    }

    @Test
    void photos_are_kept_and_nothing_but_photos() {
        Order order = order();
        long id = bench.photo(order.id(), Stage.PRINT, Optional.empty(), CameraPicture.jpeg(400, 5), "Robin");
        PhotoIntakeIT.requireUprightWithoutTraces(bench.photo(id).orElseThrow().content());
        assertThat(bench.photo(id).orElseThrow().mediaType()).isEqualTo("image/jpeg");
        assertThat(bench.photos(order.id())).hasSize(1);
        byte[] page = "<html><script>alert(1)</script></html>".getBytes(StandardCharsets.UTF_8);
        assertThatThrownBy(() -> bench.photo(order.id(), Stage.PRINT, Optional.empty(), page, "Robin"))
                .isInstanceOf(Refused.class);
    }
}
