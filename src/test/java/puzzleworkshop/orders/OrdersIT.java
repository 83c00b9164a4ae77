package puzzleworkshop.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.boards.BlankPlanner;
import puzzleworkshop.boards.BlanksWaiting;
import puzzleworkshop.boards.Chosen;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.TrialEvidence;
import puzzleworkshop.cutting.trials.PlannedTrial;
import puzzleworkshop.cutting.trials.PlannedTrials;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.OfferDesk;
import puzzleworkshop.offers.PuzzleWish;
import puzzleworkshop.offers.Wish;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PersonalShapes;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.mesh.PatternMaker;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OrdersIT {

    private static final Size FINISHED = Size.mm(200, 150);
    private static final BoardKind BIRCH = new BoardKind("birch-ply", "CRAFT", Length.mm(3));

    @Autowired
    private OfferDesk desk;

    @Autowired
    private Orders orders;

    @Autowired
    private BlanksWaiting blanks;

    @Autowired
    private Confirmations confirmations;

    @Autowired
    private Machines machines;

    @Autowired
    private Settings settings;

    @Autowired
    private PlannedTrials trials;

    @Autowired
    private SheetRack rack;

    @Autowired
    private Workshop workshop;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private javax.sql.DataSource dataSource;

    private SheetId sheet;

    @BeforeEach
    void begin() {
        CleanDatabase.now(dataSource);
        machines.save(Machine.usual("Laser", workshop.currency()));
        sheet = addSheet();
    }

    @Test
    void a_quote_comes_back_as_it_was_kept() {
        Order order = quote("Ida Norrby");
        Order again = orders.find(order.id()).orElseThrow();
        assertThat(again).isEqualTo(order);
        assertThat(again.puzzle().finished()).isEqualTo(FINISHED);
        assertThat(again.price().gross())
                .isEqualTo(again.price().net().plus(again.price().vat()));
        assertThat(orders.keptPrice(order.id())
                        .answer()
                        .toPay()
                        .sameAs(order.price().gross()))
                .isTrue();
    }

    /** A heart of three digits that no binary fraction gives, so that a rounded text would be found out. */
    @Test
    void a_heart_a_wavy_edge_and_a_tray_are_priced_kept_to_the_last_bit_and_have_boards() {
        SheetId forTray = rack.add(
                Outline.rectangle(Size.mm(390, 260)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of("3", workshop.currency().getCurrencyCode()),
                "test");
        PersonalShape heart = PersonalShapes.heart(Point.of(100.1, 75.3), Length.mm(52.7));
        Offer plain = offer();
        Offer offer = desk.workOut(new Wish(
                PuzzleWish.plain(
                                FINISHED,
                                24,
                                CutStyle.KNOBS,
                                puzzleworkshop.pattern.PuzzleEdge.usual(puzzleworkshop.pattern.PuzzleEdge.Kind.WAVY),
                                7,
                                IntendedAge.GROWN_UPS,
                                true)
                        .withShapes(List.of(heart)),
                1,
                BIRCH,
                Optional.of(sheet),
                Optional.empty(),
                "",
                Wish.Day.ANY,
                Wish.Terms.usual(workshop.currency())));
        assertThat(offer.complaints()).isEmpty();
        assertThat(offer.price().orElseThrow().answer().toPay())
                .isGreaterThan(plain.price().orElseThrow().answer().toPay());
        assertThat(offer.laserForAll().value())
                .isGreaterThan(plain.laserForAll().value());
        BlankPlan.Block tray = offer.boards().orElseThrow().blocks().getLast();
        assertThat(tray.part()).isEqualTo(BlankPlan.Part.TRAY);
        // two of 231 × 181 (15 mm of frame and 0.5 of play a side), 3 between them, 8 around
        assertThat(tray.size()).isEqualTo(Size.mm(231 + 16, 2 * 181 + 3 + 16));
        OrderDraft draft = draft("Ida Norrby", offer);
        Order order = confirmations.quote(
                BookingKey.fresh(),
                new OrderDraft(
                        draft.customer(),
                        1,
                        new Puzzle(offer.pattern().orElseThrow().spec(), IntendedAge.GROWN_UPS, true),
                        BIRCH,
                        Optional.empty(),
                        "",
                        new DeliveryTerms(Optional.empty(), draft.delivery().promised(), false, Optional.empty()),
                        draft.laser(),
                        draft.price(),
                        draft.validUntil(),
                        ""),
                offer.boards().orElseThrow(),
                "Mara");
        Order again = orders.get(order.id());
        assertThat(again.puzzle().pattern())
                .isEqualTo(offer.pattern().orElseThrow().spec());
        assertThat(again.puzzle().pattern().shapes()).containsExactly(heart);
        assertThat(again.puzzle().pieces())
                .isEqualTo(offer.pattern().orElseThrow().pieces().size())
                .isNotEqualTo(24);
        confirmations.confirm(order.id(), "Mara");
        assertThat(blanks.of(order.id()))
                .extracting(Chosen::part)
                .containsExactly(BlankPlan.Part.PUZZLE, BlankPlan.Part.TRAY);
        assertThat(rack.find(forTray).orElseThrow().state()).isEqualTo(SheetState.RESERVED);
    }

    /** Thirds and sevenths, so that a rounded number would be found out; the same lines come out again, digit by digit. */
    @Test
    void a_heart_shaped_puzzle_of_uneven_pieces_with_faces_kept_whole_goes_with_the_order() {
        PieceLayout layout = new PieceLayout(
                true,
                List.of(
                        new KeptWhole(Point.of(200 / 3.0, 60.1), 31 / 7.0, 17 / 3.0),
                        new KeptWhole(Point.of(130.3, 71.7), 6.1, 8)));
        PatternSpec spec = PatternSpec.of(FINISHED, new PieceGrid(8, 6), 7)
                .withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.HEART))
                .withLayout(layout);
        Offer offer = offer();
        OrderDraft draft = draft("Ida Norrby", offer);
        Puzzle puzzle = new Puzzle(spec, IntendedAge.GROWN_UPS, false);
        Order order = confirmations.quote(
                BookingKey.fresh(),
                new OrderDraft(
                        draft.customer(),
                        1,
                        puzzle,
                        BIRCH,
                        Optional.empty(),
                        "",
                        new DeliveryTerms(Optional.empty(), draft.delivery().promised(), false, Optional.empty()),
                        draft.laser(),
                        draft.price(),
                        draft.validUntil(),
                        ""),
                offer.boards().orElseThrow(),
                "Mara");
        Order again = orders.get(order.id());
        assertThat(again.puzzle()).isEqualTo(puzzle);
        assertThat(PatternMaker.make(again.puzzle().pattern()).svgPathData())
                .isEqualTo(PatternMaker.make(spec).svgPathData());
        assertThat(again.puzzle().pieces())
                .isEqualTo(PatternMaker.make(spec).pieces().size())
                .isLessThan(48);
    }

    @Test
    void a_confirmed_order_holds_its_sheet_and_a_given_up_one_frees_it() {
        Order order = confirmations.confirm(quote("Ida Norrby").id(), "Mara");
        assertThat(rack.find(sheet).orElseThrow().state()).isEqualTo(SheetState.RESERVED);
        assertThat(order.next()).contains(puzzleworkshop.workshop.Stage.PRINT);
        orders.cancel(order.id(), "changed their mind", "Mara");
        assertThat(rack.find(sheet).orElseThrow().state()).isEqualTo(SheetState.FREE);
    }

    @Test
    void confirming_on_settings_that_are_not_proven_plans_a_trial_until_they_are() {
        addSheet();
        Order first = confirmations.confirm(quote("Ida Norrby").id(), "Mara");
        Order second = confirmations.confirm(quote("Oskar Lund").id(), "Mara");
        assertThat(trials.open())
                .extracting(PlannedTrial::labels)
                .containsExactly(java.util.List.of(first.number(), second.number()));
        assertThat(trials.open().getFirst().next()).isPresent();
        assertThat(orders.history(first.id()))
                .anyMatch(line -> line.what().key().equals("orders.history.trial-planned"));
        // both wait for the same trial, and it is made once
        assertThat(trials.minutesByOrder()).containsOnlyKeys(first.id());
        orders.cancel(first.id(), "changed their mind", "Mara");
        assertThat(trials.minutesByOrder()).containsOnlyKeys(second.id());
        Machine machine = machines.standard().orElseThrow();
        for (int good = 0; good < TrialEvidence.GOOD_IN_A_ROW; good++) {
            assertThat(trials.openFor(second.id())).isPresent();
            settings.record(
                    BookingKey.fresh(),
                    machine,
                    BIRCH,
                    settings.forBoard(machine, BIRCH).parameters(),
                    Trial.Finding.of(Trial.Result.THROUGH, 1),
                    Trial.Source.TRY,
                    "Mara",
                    Optional.empty());
        }
        assertThat(trials.open()).isEmpty();
        addSheet();
        Order third = confirmations.confirm(quote("Priya Raman").id(), "Mara");
        assertThat(trials.openFor(third.id())).isEmpty();
    }

    @Test
    void a_confirmed_order_that_grows_lets_its_sheet_go_and_holds_one_that_does() {
        Order order = confirmations.confirm(quote("Ida Norrby").id(), "Mara");
        SheetId larger = rack.add(
                Outline.rectangle(Size.mm(390, 260)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of("3", workshop.currency().getCurrencyCode()),
                "test");
        Size grown = Size.mm(300, 200);
        Offer offer = offer(grown);
        confirmations.change(
                order.id(),
                order.version(),
                draft("Ida Norrby", offer),
                offer.boards().orElseThrow(),
                "Mara");
        assertThat(rack.find(sheet).orElseThrow().state()).isEqualTo(SheetState.FREE);
        assertThat(rack.find(larger).orElseThrow().state()).isEqualTo(SheetState.RESERVED);
        assertThat(blanks.of(order.id()))
                .singleElement()
                .satisfies(block -> assertThat(block.size()).isEqualTo(Size.mm(322, 222)));
    }

    @Test
    void of_two_quotes_on_one_sheet_only_one_is_confirmed_and_the_other_stays_a_quote() {
        Order first = quote("Ida Norrby");
        Order second = quote("Oskar Lund");
        confirmations.confirm(first.id(), "Mara");
        assertThatThrownBy(() -> confirmations.confirm(second.id(), "Mara")).isInstanceOf(Refused.class);
        assertThat(orders.get(second.id()).state()).isEqualTo(OrderState.QUOTE);
        SheetId other = addSheet();
        var wish = BlankPlanner.wish(blanks.of(second.id()).getFirst().size(), BIRCH, Length.mm(1));
        assertThat(wish.size()).isEqualTo(Size.mm(222, 172));
        assertThat(rack.find(other).orElseThrow().isFree()).isTrue();
    }

    @Test
    void twenty_quotes_at_a_time_get_twenty_numbers_in_a_row() throws Exception {
        List<String> numbers = new ArrayList<>();
        try (ExecutorService many = Executors.newFixedThreadPool(8)) {
            List<Future<Order>> made = new ArrayList<>();
            for (int i = 0; i < 20; i++) {
                String customer = "Customer " + i;
                made.add(many.submit(() -> quote(customer)));
            }
            for (Future<Order> order : made) {
                numbers.add(order.get().number());
            }
        }
        int year = LocalDate.now(workshop.zone()).getYear();
        List<String> expected = new ArrayList<>();
        for (int i = 1; i <= 20; i++) {
            expected.add("%d-%04d".formatted(year, i));
        }
        assertThat(numbers).containsExactlyInAnyOrderElementsOf(expected);
    }

    @Test
    void a_change_on_an_old_view_is_refused() {
        Order seen = quote("Ida Norrby");
        confirmations.change(
                seen.id(),
                seen.version(),
                draft("Ida Norrby", offer()),
                offer().boards().orElseThrow(),
                "Mara");
        assertThatThrownBy(() -> confirmations.change(
                        seen.id(),
                        seen.version(),
                        draft("Ida N.", offer()),
                        offer().boards().orElseThrow(),
                        "Robin"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("changed-meanwhile");
    }

    @Test
    void an_unapproved_picture_is_not_printed() {
        Order order = confirmations.confirm(quote("Ida Norrby").id(), "Mara");
        assertThatThrownBy(() -> orders.completeStage(order.id(), puzzleworkshop.workshop.Stage.PRINT, "Mara"))
                .isInstanceOf(Refused.class);
    }

    @Test
    void the_history_can_only_be_added_to() {
        Order order = quote("Ida Norrby");
        assertThat(orders.history(order.id())).hasSize(1);
        assertThatThrownBy(() -> jdbc.sql("delete from order_history").update()).hasMessageContaining("history");
        assertThatThrownBy(() ->
                        jdbc.sql("update order_history set who = 'nobody'").update())
                .hasMessageContaining("history");
    }

    @Test
    void orders_are_found_by_number_and_by_part_of_the_customers_name() {
        Order order = quote("Museum of Small_Trains");
        quote("Oskar Lund");
        assertThat(orders.count(new OrderFilter("small_t", java.util.Set.of(), Optional.empty())))
                .isEqualTo(1);
        assertThat(orders.list(new OrderFilter(order.number(), java.util.Set.of(), Optional.empty()), 0, 10))
                .hasSize(1);
        assertThat(orders.count(OrderFilter.in(OrderState.CONFIRMED))).isZero();
    }

    private SheetId addSheet() {
        return rack.add(
                Outline.rectangle(Size.mm(260, 200)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of("2", workshop.currency().getCurrencyCode()),
                "test");
    }

    private Order quote(String customer) {
        Offer offer = offer();
        return confirmations.quote(
                BookingKey.fresh(), draft(customer, offer), offer.boards().orElseThrow(), "Mara");
    }

    private Offer offer() {
        return offer(FINISHED);
    }

    private Offer offer(Size finished) {
        Offer offer = desk.workOut(new Wish(
                PuzzleWish.plain(
                        finished,
                        24,
                        CutStyle.KNOBS,
                        puzzleworkshop.pattern.PuzzleEdge.square(),
                        7,
                        IntendedAge.GROWN_UPS,
                        false),
                1,
                BIRCH,
                Optional.empty(),
                Optional.empty(),
                "",
                Wish.Day.ANY,
                Wish.Terms.usual(workshop.currency())));
        assertThat(offer.complaints()).isEmpty();
        return offer;
    }

    private OrderDraft draft(String customer, Offer offer) {
        LocalDate today = LocalDate.now(workshop.zone());
        return new OrderDraft(
                Customer.newcomer(customer, "", ""),
                1,
                new Puzzle(offer.pattern().orElseThrow().spec(), IntendedAge.GROWN_UPS, false),
                BIRCH,
                Optional.empty(),
                "",
                new DeliveryTerms(Optional.empty(), Optional.of(today.plusDays(9)), false, Optional.empty()),
                offer.laserForAll(),
                offer.price().orElseThrow(),
                today.plusDays(14),
                "");
    }
}
