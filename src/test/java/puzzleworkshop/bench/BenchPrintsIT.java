package puzzleworkshop.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintRoom;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;

/** Prints that come out of a run, seen from the bench. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class BenchPrintsIT {

    @Autowired
    Bench bench;

    @Autowired
    Orders orders;

    @Autowired
    WeekPlan plan;

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

    /** A run of what waits, laid out and confirmed. */
    private PrintRun confirmedRun(Order order) {
        PrintRun run = proposed(order);
        return beans.getBean(PrintRoom.class).confirm(run.id(), "Robin");
    }

    private PrintRun proposed(Order order) {
        long medium = beans.getBean(PrintMedia.class).all().getFirst().id().orElseThrow();
        return beans.getBean(GangRuns.class)
                .propose(medium, order.promised().orElseThrow().plusDays(30), "Robin");
    }

    private Bench.Waiting card(Order order) {
        return bench.queue(Stage.PRINT).stream()
                .filter(waiting -> waiting.order().id().equals(order.id()))
                .findFirst()
                .orElseThrow();
    }

    private void printed(PrintRun run) {
        beans.getBean(PrintRoom.class)
                .printed(BookingKey.fresh(), run.id(), Set.of(), "", Optional.of("a new pack"), "Robin");
    }

    @Test
    @Transactional
    void a_run_shows_the_picture_of_a_print_whose_order_was_given_up() {
        GangRuns runs = beans.getBean(GangRuns.class);
        Order order = order();
        PrintRun run = proposed(order);
        String look = run.items().stream()
                .filter(item -> item.order().id().equals(order.id()))
                .findFirst()
                .orElseThrow()
                .look();
        orders.cancel(order.id(), "not wanted any more", "Robin");
        assertThat(runs.waiting()).noneMatch(copy -> copy.item().order().id().equals(order.id()));
        assertThat(runs.pictureOf(order.id()).orElseThrow().look()).isEqualTo(look);
    }

    @Test
    @Transactional
    void a_print_of_a_run_is_ticked_again_by_hand_after_its_tick_was_taken_back_and_takes_no_second_paper() {
        SupplyId paper = shelf("Sticker paper A4", SupplyKind.STICKER_PAPER);
        shelf("Film A4", SupplyKind.LAMINATE);
        Order order = order();
        printed(confirmedRun(order));
        BigDecimal afterTheRun = stock(paper);
        assertThat(afterTheRun).isLessThan(BigDecimal.valueOf(100));

        bench.undo(BookingKey.fresh(), order.id(), "Robin");
        assertThat(stock(paper)).as("what is printed is printed").isEqualByComparingTo(afterTheRun);
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.PRINT, "Robin", "phone");
        assertThat(orders.get(order.id()).next()).contains(Stage.LAMINATE);
        assertThat(stock(paper)).isEqualByComparingTo(afterTheRun);
        bench.undo(BookingKey.fresh(), order.id(), "Robin");
        assertThat(stock(paper)).as("the run keeps what it took").isEqualByComparingTo(afterTheRun);

        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.PRINT, "Robin", "phone");
        bench.wentWrong(
                BookingKey.fresh(),
                order.id(),
                new Rework.Report(Rework.What.BUBBLES, Stage.PRINT, "", Rework.Board.KEPT, Optional.empty()),
                "Robin");
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.PRINT, "Robin", "phone");
        assertThat(stock(paper))
                .as("a print made again is another print")
                .isEqualByComparingTo(afterTheRun.subtract(BigDecimal.ONE));
    }

    @Test
    void a_print_that_lies_in_a_run_is_ticked_by_the_run_alone_so_that_the_run_is_never_left_without_it() {
        Order order = order();
        PrintRun run = proposed(order);
        assertThat(card(order).mayNot()).contains(Sentence.of("bench.may-not.run-proposed", run.id()));
        PrintRoom room = beans.getBean(PrintRoom.class);
        room.confirm(run.id(), "Robin");

        assertThat(card(order).mayNot()).contains(Sentence.of("bench.may-not.run", run.id()));
        assertThat(card(order).mayNotInShort()).contains(Sentence.of("bench.card.may-not.run", run.id()));
        Bench.Outcome early = bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.PRINT, "Robin", "phone");
        assertThat(early.done()).isEmpty();
        assertThat(early.refused()).containsValue(Sentence.of("bench.may-not.run", run.id()));

        room.printed(BookingKey.fresh(), run.id(), Set.of(), "", Optional.of("a new pack"), "Robin");
        assertThat(orders.get(order.id()).next()).contains(Stage.LAMINATE);
        assertThat(bench.ticks(order.id())).hasSize(1);
    }

    @Test
    void a_print_made_without_a_run_is_lost_at_what_the_price_reckoned_for_it() {
        Order order = order();
        make.bringTo(order.id(), Stage.STICK);
        var print = orders.keptPrice(order.id()).answer().costs().of(CostPart.PRINT);
        var all = new Rework.Report(Rework.What.PRINT_FAULT, Stage.PRINT, "", Rework.Board.KEPT, Optional.empty());
        assertThat(bench.reckoned(order.id(), all).materialLost()).isEqualTo(print.rounded());
    }

    @Test
    @Transactional
    void a_print_made_again_at_the_bench_takes_paper_and_film_and_gives_them_back_with_the_tick() {
        SupplyId paper = shelf("Sticker paper A4", SupplyKind.STICKER_PAPER);
        SupplyId film = shelf("Film A4", SupplyKind.LAMINATE);
        Order order = order();
        make.bringTo(order.id(), Stage.LAMINATE);
        // a sticker of 206 x 156 mm: one on an A4 sheet, upright or lying
        assertThat(stock(paper)).isEqualByComparingTo("99");
        assertThat(stock(film)).isEqualByComparingTo("99");
        Rework lost = bench.wentWrong(
                BookingKey.fresh(),
                order.id(),
                new Rework.Report(Rework.What.BUBBLES, Stage.PRINT, "", Rework.Board.KEPT, Optional.empty()),
                "Robin");
        assertThat(lost.materialLost()).isEqualTo(Money.of("1.00", "EUR"));
        bench.tick(BookingKey.fresh(), List.of(order.id()), Stage.PRINT, "Robin", "phone");
        assertThat(stock(paper)).isEqualByComparingTo("98");
        bench.undo(BookingKey.fresh(), order.id(), "Robin");
        assertThat(stock(paper)).isEqualByComparingTo("99");
        assertThat(stock(film)).isEqualByComparingTo("99");
    }

    private SupplyId shelf(String name, SupplyKind kind) {
        Supplies supplies = beans.getBean(Supplies.class);
        SupplyItem item = supplies.keep(new SupplyItem(
                Optional.empty(),
                name,
                kind,
                UseUnit.SHEET,
                Optional.of(Length.mm(210)),
                Optional.of(Length.mm(297)),
                "pack of 100",
                BigDecimal.valueOf(100),
                new LaserFacts(LaserFacts.Pvc.FREE, LaserFacts.Adhesive.DRY),
                7,
                3,
                true,
                false,
                BigDecimal.ZERO,
                Money.zero(supplies.currency())));
        supplies.buy(BookingKey.fresh(), item.id().orElseThrow(), BigDecimal.ONE, Money.of("50", "EUR"), "", "Robin");
        return item.id().orElseThrow();
    }

    private BigDecimal stock(SupplyId id) {
        return beans.getBean(Supplies.class).find(id).orElseThrow().stock();
    }
}
