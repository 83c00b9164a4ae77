package puzzleworkshop.printing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.LongStream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.geometry.packing.LayoutJudge;
import puzzleworkshop.geometry.packing.PackItem;
import puzzleworkshop.geometry.packing.PackedAt;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.crosses.PrintedCrosses;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.Movement;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainOrders;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class GangRunsIT {

    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);

    @Autowired
    RunStore runs;

    @Autowired
    PrintMedia media;

    @Autowired
    Bookings bookings;

    @Autowired
    Supplies supplies;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Clock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource database;

    private final Waiting waiting = new Waiting();
    private GangRuns gang;
    private PrintRoom room;
    private long a3;

    /** Stands in for the orders: what waits, and what was told. */
    private static final class Waiting extends PrintQueue implements ApplicationEventPublisher {
        final Map<OrderId, PrintItem> items = new LinkedHashMap<>();
        final List<String> told = new ArrayList<>();
        final Map<OrderId, Sentence> held = new LinkedHashMap<>();

        Waiting() {
            super(null, null, null);
        }

        @Override
        Map<OrderId, Sentence> heldBack() {
            return held;
        }

        @Override
        List<PrintItem> waiting() {
            return List.copyOf(items.values());
        }

        @Override
        Optional<PrintItem> find(OrderId order) {
            return Optional.ofNullable(items.get(order));
        }

        @Override
        public void publishEvent(Object event) {
            if (event instanceof RunPrinted run) {
                run.complete().forEach(order -> told.add("printed " + order.value()));
            } else if (event instanceof PrintSpoiled print) {
                told.add("spoiled " + print.order().value() + " " + print.copy());
            }
        }
    }

    @Autowired
    PrintedCrosses crosses;

    @Autowired
    AfterCommit afterCommit;

    @BeforeEach
    void an_empty_workshop() {
        CleanDatabase.now(database);
        PlainOrders.withIds(database, LongStream.rangeClosed(1, 12).toArray());
        waiting.items.clear();
        waiting.told.clear();
        waiting.held.clear();
        RunRecords records = new RunRecords(runs, media, waiting, clock, afterCommit);
        gang = new GangRuns(runs, records, media, supplies, crosses, transaction);
        room = new PrintRoom(runs, bookings, records, waiting, supplies);
        a3 = media.all().stream()
                .filter(m -> m.name().equals("A3"))
                .findFirst()
                .orElseThrow()
                .id()
                .orElseThrow();
    }

    @Test
    void what_is_due_first_goes_first_and_the_rest_fills_the_sheet() {
        waits(1, 1, 200, 270, MONDAY.plusDays(9));
        waits(2, 1, 260, 190, MONDAY);
        waits(3, 1, 120, 90, MONDAY.plusDays(5));
        PrintRun run = gang.propose(a3, MONDAY, "Robin");
        assertThat(run.sheets()).isEqualTo(1);
        assertThat(run.items()).extracting(item -> item.order().id().value()).containsExactly(2L, 3L);
        assertThat(run.bound().key()).isEqualTo("printing.bound.sheets-best");
        assertThat(gang.waiting())
                .extracting(copy -> copy.item().order().id().value())
                .containsExactly(1L);
        assertLaidOut(run);
    }

    @Test
    void an_order_held_back_joins_no_proposed_run_and_still_waits() {
        waits(1, 1, 200, 270, MONDAY);
        waits(2, 1, 100, 100, MONDAY);
        waiting.held.put(new OrderId(1), Sentence.of("printing.waits.payment", MONDAY));
        PrintRun run = gang.propose(a3, MONDAY.plusDays(7), "Ada");
        assertThat(run.planned()).extracting(item -> item.order().id().value()).containsExactly(2L);
        assertThat(gang.waiting())
                .extracting(copy -> copy.item().order().id().value())
                .containsExactly(1L);
        assertThatThrownBy(() -> gang.propose(a3, MONDAY, "Ada"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("all-held-back");
        waiting.held.clear();
        assertThat(gang.propose(a3, MONDAY, "Ada").planned())
                .extracting(item -> item.order().id().value())
                .containsExactly(1L);
    }

    @Test
    void copies_of_one_order_wait_one_by_one_and_are_in_one_open_run_only() {
        waits(1, 3, 120, 90, MONDAY);
        PrintRun run = gang.propose(a3, MONDAY, "Robin");
        assertThat(run.items()).extracting(RunItem::copy).containsExactly(1, 2, 3);
        assertThatThrownBy(() -> gang.propose(a3, MONDAY, "Ada"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("nothing-waits");
        assertThatThrownBy(() -> jdbc.sql("""
            insert into print_run_item (run_id, order_id, order_number, copy, look, width_mm, height_mm, overhang_mm, sheet, x_mm,
                y_mm, turned, outcome)
            values (:run, 1, '2026-0001', 2, '', 10, 10, 3, 0, 6, 6, false, 'PLANNED')
            """).param("run", run.id()).update())
                .isInstanceOf(DuplicateKeyException.class)
                .hasMessageContaining("print_copy_in_one_run");
    }

    @Test
    void a_moved_print_is_pinned_and_the_others_go_around_it() {
        for (int order = 1; order <= 5; order++) {
            waits(order, 1, 120, 90, MONDAY);
        }
        PrintRun run = gang.propose(a3, MONDAY, "Robin");
        RunItem first = run.items().getFirst();
        PrintRun moved = gang.move(run.id(), first.id(), 0, Length.mm(80), Length.mm(150), first.turned(), "Robin");
        RunItem now = RunPlanner.byId(moved.items(), first.id()).orElseThrow();
        assertThat(now.pinned()).isTrue();
        assertThat(now.x().mm()).isEqualTo(80);
        assertThat(now.y().mm()).isEqualTo(150);
        assertLaidOut(moved);
        RunItem other = moved.items().get(1);
        assertThatThrownBy(() -> gang.move(run.id(), other.id(), 0, Length.mm(90), Length.mm(160), false, "Robin"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("pinned-in-the-way");
        assertLaidOut(gang.pin(run.id(), first.id(), false, "Robin"));
        assertLaidOut(gang.layOutAnew(run.id(), "Robin"));
    }

    @Test
    void a_print_dropped_outside_the_sheet_comes_to_lie_at_its_edge() {
        waits(1, 1, 120, 90, MONDAY);
        PrintRun run = gang.propose(a3, MONDAY, "Robin");
        PrintRun moved =
                gang.move(run.id(), run.items().getFirst().id(), 0, Length.mm(900), Length.mm(-50), false, "Robin");
        assertThat(moved.items().getFirst().x().mm()).isEqualTo(297 - 6 - 126);
        assertThat(moved.items().getFirst().y().mm()).isEqualTo(6);
    }

    @Test
    void printing_books_paper_by_area_and_sends_the_orders_on() {
        SupplyItem paper = keepPaper(LaserFacts.Pvc.FREE);
        supplies.buy(BookingKey.fresh(), paper.id().orElseThrow(), BigDecimal.ONE, Money.of("50", "EUR"), "", "Robin");
        waits(1, 2, 120, 90, MONDAY);
        waits(2, 1, 240, 90, MONDAY);
        PrintRun run = gang.propose(a3, MONDAY, "Robin");
        room.confirm(run.id(), "Robin");
        long bad = run.items().stream()
                .filter(item -> item.order().id().value() == 1 && item.copy() == 2)
                .findFirst()
                .orElseThrow()
                .id();
        PrintRun printed = in(() -> room.printed(
                BookingKey.fresh(), run.id(), Set.of(bad), "A stripe across the sky", Optional.empty(), "Robin"));
        assertThat(printed.state()).isEqualTo(RunState.PRINTED);
        assertThat(waiting.told).containsExactly("printed 2");
        assertThat(gang.waiting())
                .extracting(copy -> copy.item().order().id().value() + "/" + copy.number())
                .containsExactly("1/2", "2/1");
        List<Movement> used = supplies.movements(paper.id().orElseThrow(), 0, 10).stream()
                .filter(m -> m.kind() == Movement.Kind.USED)
                .toList();
        assertThat(used.stream().map(Movement::quantity).reduce(BigDecimal.ZERO, BigDecimal::add))
                .isEqualByComparingTo("-1");
        // Shares by sticker area: 2 × 126 × 96 against 246 × 96.
        assertThat(used.stream()
                        .filter(m -> m.order().map(OrderRef::id).equals(Optional.of(new OrderId(1))))
                        .findFirst()
                        .orElseThrow()
                        .quantity()
                        .doubleValue())
                .isEqualTo(-252.0 / 498, org.assertj.core.data.Offset.offset(1e-5));
        assertThatThrownBy(() ->
                        in(() -> room.printed(BookingKey.fresh(), run.id(), Set.of(), "", Optional.empty(), "Ada")))
                .isInstanceOf(Refused.class);
    }

    @Test
    void a_print_spoiled_later_waits_again_alone_and_its_order_is_told() {
        waits(1, 2, 120, 90, MONDAY);
        PrintRun run = gang.propose(a3, MONDAY, "Robin");
        room.confirm(run.id(), "Robin");
        in(() -> room.printed(BookingKey.fresh(), run.id(), Set.of(), "", Optional.empty(), "Robin"));
        waiting.told.clear();
        long spoiled = run.items().getFirst().id();
        assertThatThrownBy(() -> in(() -> room.spoiled(spoiled, " ", "Robin"))).isInstanceOf(Refused.class);
        in(() -> room.spoiled(spoiled, "Bubbles in the film", "Robin"));
        assertThat(waiting.told).containsExactly("spoiled 1 1");
        assertThat(gang.waiting()).extracting(Copy::number).containsExactly(1);
    }

    @Test
    void an_order_that_came_back_after_all_its_prints_is_printed_anew() {
        waits(1, 1, 120, 90, MONDAY);
        PrintRun run = gang.propose(a3, MONDAY, "Robin");
        room.confirm(run.id(), "Robin");
        in(() -> room.printed(BookingKey.fresh(), run.id(), Set.of(), "", Optional.empty(), "Robin"));
        assertThat(gang.waiting())
                .as("it still stands in the queue, so it came back")
                .hasSize(1);
        PrintRun again = gang.propose(a3, MONDAY, "Robin");
        assertThat(again.items()).hasSize(1);
        assertThat(gang.get(run.id()).items().getFirst().outcome()).isEqualTo(RunItem.Outcome.MADE_AGAIN);
    }

    @Test
    void sticker_paper_with_PVC_is_never_laid_out() {
        keepPaper(LaserFacts.Pvc.PVC);
        waits(1, 1, 120, 90, MONDAY);
        assertThatThrownBy(() -> gang.propose(a3, MONDAY, "Robin"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("pvc-PVC");
    }

    @Test
    void a_run_whose_order_changed_meanwhile_is_not_confirmed() {
        waits(1, 1, 120, 90, MONDAY);
        PrintRun run = gang.propose(a3, MONDAY, "Robin");
        waits(1, 1, 120, 90, MONDAY, new UUID(9, 9));
        assertThatThrownBy(() -> in(() -> room.confirm(run.id(), "Robin")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("changed-since");
        PrintRun emptied = gang.drop(run.id(), run.items().getFirst().id(), "Robin");
        assertThat(emptied.sheets()).isZero();
        assertThatThrownBy(() -> in(() -> room.confirm(run.id(), "Robin")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("run-empty");
        in(() -> {
            room.discard(run.id(), "Robin");
            return null;
        });
        assertThat(gang.open()).isEmpty();
        assertThat(gang.waiting()).hasSize(1);
    }

    @Test
    void on_a_roll_the_length_is_least_and_everything_lies_inside() {
        long roll = media.all().stream()
                .filter(m -> m.kind() == PrintMedium.Kind.ROLL)
                .findFirst()
                .orElseThrow()
                .id()
                .orElseThrow();
        for (int order = 1; order <= 4; order++) {
            waits(order, 1, 280, 180, MONDAY);
        }
        PrintRun run = gang.propose(roll, MONDAY, "Robin");
        // Two beside each other, twice: 2 × (286 + 4) − 4 ≤ 594; length 2 × (186 + 8) + 4 and 8 mm at both ends.
        assertThat(run.length().mm()).isEqualTo(2 * 194 + 4 + 16);
        assertThat(run.bound().key()).isEqualTo("printing.bound.roll-best");
        assertLaidOut(run);
    }

    @Test
    void what_is_larger_than_every_sheet_is_said() {
        waits(1, 1, 500, 400, MONDAY);
        assertThatThrownBy(() -> gang.propose(a3, MONDAY, "Robin"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("nothing-fits");
    }

    private <T> T in(Supplier<T> work) {
        return transaction.execute(status -> work.get());
    }

    private SupplyItem keepPaper(LaserFacts.Pvc pvc) {
        return supplies.keep(new SupplyItem(
                Optional.empty(),
                "Sticker paper A3",
                SupplyKind.STICKER_PAPER,
                UseUnit.SHEET,
                Optional.of(Length.mm(297)),
                Optional.of(Length.mm(420)),
                "pack of 100",
                BigDecimal.valueOf(100),
                new LaserFacts(pvc, LaserFacts.Adhesive.DRY),
                5,
                5,
                true,
                false,
                BigDecimal.ZERO,
                Money.of(BigDecimal.ZERO, Currency.getInstance("EUR"))));
    }

    private void waits(long order, int quantity, double width, double height, LocalDate due) {
        waits(order, quantity, width, height, due, new UUID(1, order));
    }

    private void waits(long order, int quantity, double width, double height, LocalDate due, UUID picture) {
        OrderRef ref = new OrderRef(new OrderId(order), String.format("2026-%04d", order));
        waiting.items.put(
                ref.id(),
                new PrintItem(
                        ref,
                        quantity,
                        Size.mm(width, height),
                        Length.mm(3),
                        Optional.of(due),
                        new PictureId(picture),
                        new Crop(0, 0, 1, 1, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED)));
    }

    /** Judged by JTS: inside the sheet less its inset, a gap apart. */
    private static void assertLaidOut(PrintRun run) {
        double inset = run.medium().inset().mm();
        List<PackItem> pieces = new ArrayList<>();
        List<PackedAt> spots = new ArrayList<>();
        for (RunItem item : run.planned()) {
            spots.add(new PackedAt(
                    pieces.size(), item.sheet(), item.x().mm() - inset, item.y().mm() - inset, item.turned()));
            pieces.add(PackItem.of(
                    item.sticker().width().mm(), item.sticker().height().mm() + 8));
        }
        double height =
                (run.isRoll() ? run.length().mm() : run.medium().size().height().mm()) - 2 * inset;
        assertThat(LayoutJudge.fault(
                        pieces,
                        spots,
                        run.medium().size().width().mm() - 2 * inset,
                        height,
                        run.medium().gap().mm() - 0.003))
                .isEmpty();
        assertThat(run.sheets()).isGreaterThanOrEqualTo(run.fewestSheets());
    }
}
