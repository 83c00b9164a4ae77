package puzzleworkshop.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.NewSheet;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainOrders;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class SheetRackIT {

    private static final BoardFacts BIRCH = BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3));
    private static final BlankWish A4 = BlankWish.of(Size.mm(319, 232), Length.mm(3));

    @Autowired
    SheetRack rack;

    @Autowired
    SheetFinder finder;

    @Autowired
    RackSettings settings;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    SheetHolds holds;

    private Cut cut(SheetId sheet) {
        List<Outline> kept = holds.proposal(sheet).parts().stream()
                .filter(part -> !part.isScrap())
                .map(Remainder.Part::outline)
                .toList();
        return holds.cut(sheet, kept, "", "Robin");
    }

    private SheetId add(double w, double h, BoardFacts facts, String cost) {
        return rack.add(Outline.rectangle(Size.mm(w, h)), facts, Money.of(cost, "EUR"), "Robin");
    }

    @Test
    void of_200_people_who_want_one_offcut_at_once_exactly_one_gets_it() throws Exception {
        SheetId sheet = add(400, 300, BIRCH, "2.00");
        List<OrderRef> orders = PlainOrders.add(jdbc, 200);
        CountDownLatch start = new CountDownLatch(1);
        List<Future<String>> answers = new ArrayList<>();
        try (ExecutorService people = Executors.newFixedThreadPool(200)) {
            for (int i = 0; i < 200; i++) {
                OrderRef order = orders.get(i);
                answers.add(people.submit(() -> {
                    start.await();
                    try {
                        holds.hold(sheet, order, new Placement(0, 0, 0), A4.size(), "Robin");
                        return "got it";
                    } catch (SheetTaken taken) {
                        return taken.sentence().key();
                    }
                }));
            }
            start.countDown();
        }
        List<String> all = new ArrayList<>();
        for (Future<String> answer : answers) {
            all.add(answer.get());
        }
        assertThat(all).filteredOn("got it"::equals).hasSize(1);
        assertThat(all).filteredOn("sheets.taken.by"::equals).hasSize(199);
        assertThat(jdbc.sql("select count(*) from sheet_reservation where sheet_id = :id and ended_at is null")
                        .param("id", sheet.value())
                        .query(Integer.class)
                        .single())
                .isEqualTo(1);
    }

    @Test
    @Transactional
    void the_snug_offcut_is_taken_and_the_whole_board_left_alone() {
        add(1220, 600, BIRCH, "12.00");
        SheetId snug = add(330, 245, BIRCH, "1.00");
        add(500, 400, BIRCH, "3.00");
        List<Suggestion> found = finder.suggest(A4);
        assertThat(found).hasSize(3);
        assertThat(found.getFirst().sheet().id()).isEqualTo(snug);
        assertThat(found.getFirst().reason().key()).isEqualTo("sheets.reason.snug");
        assertThat(found.getLast().valueLost()).isGreaterThan(found.getFirst().valueLost());
    }

    @Test
    @Transactional
    void a_sheet_of_unknown_or_wet_past_or_with_a_bow_is_never_offered_and_says_why() {
        SheetId wet = add(500, 400, withPast(BoardContamination.WET_GLUE), "1.00");
        SheetId unknown = add(500, 400, withPast(BoardContamination.UNKNOWN), "1.00");
        SheetId bowed = add(
                500,
                400,
                new BoardFacts(
                        "birch-ply",
                        Grade.CRAFT,
                        Length.mm(3),
                        java.util.Optional.empty(),
                        Length.mm(4),
                        BoardContamination.CLEAN,
                        Grain.NONE,
                        "",
                        ""),
                "1.00");
        SheetId small = add(250, 200, BIRCH, "1.00");
        SheetId thick = add(500, 400, BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(6)), "1.00");
        assertThat(finder.suggest(A4)).isEmpty();
        assertThat(finder.whyNot(wet, A4).key()).isEqualTo("sheets.whynot.past.WET_GLUE");
        assertThat(finder.whyNot(unknown, A4).key()).isEqualTo("sheets.whynot.past.UNKNOWN");
        assertThat(finder.whyNot(bowed, A4).key()).isEqualTo("sheets.whynot.bow");
        assertThat(finder.whyNot(small, A4).key()).isEqualTo("sheets.whynot.shape");
        assertThat(finder.whyNot(thick, A4).key()).isEqualTo("sheets.whynot.thickness");
        assertThatThrownBy(() ->
                        holds.hold(wet, new OrderRef(new OrderId(1), ""), new Placement(0, 0, 0), A4.size(), "Robin"))
                .isInstanceOf(Refused.class);
    }

    private static BoardFacts withPast(BoardContamination past) {
        return new BoardFacts(
                "birch-ply",
                Grade.CRAFT,
                Length.mm(3),
                java.util.Optional.empty(),
                Length.ZERO,
                past,
                Grain.NONE,
                "",
                "");
    }

    @Test
    @Transactional
    void when_no_sheet_gives_the_blank_a_new_board_is_offered_at_its_price() {
        assertThat(finder.newSheetFor(A4)).isEmpty();
        settings.save(new BoardOffer(
                0,
                "birch 600 × 400",
                "birch-ply",
                Grade.CRAFT,
                Length.mm(3),
                Size.mm(600, 400),
                Grain.NONE,
                Money.of("6.40", "EUR"),
                true));
        NewSheet offer = finder.newSheetFor(A4).orElseThrow();
        assertThat(offer.offer().price().amount()).isEqualByComparingTo("6.40");
        assertThat(offer.blankCost().amount())
                .isBetween(new java.math.BigDecimal("1.00"), new java.math.BigDecimal("6.40"));
    }

    @Test
    @Transactional
    void grain_allows_only_square_places() {
        Outline slanted = Outline.of(new Placement(300, 0, 45).corners(Size.mm(340, 250)));
        BoardFacts grained = new BoardFacts(
                "birch-ply",
                Grade.CRAFT,
                Length.mm(3),
                java.util.Optional.empty(),
                Length.ZERO,
                BoardContamination.CLEAN,
                Grain.ALONG_WIDTH,
                "",
                "");
        SheetId sheet = rack.add(slanted, grained, Money.of("1.00", "EUR"), "Robin");
        assertThat(finder.suggest(A4)).hasSize(1);
        BlankWish square = A4.withGrain(BlankWish.GrainWish.SQUARE);
        assertThat(finder.suggest(square)).isEmpty();
        assertThat(finder.whyNot(sheet, square).key()).isEqualTo("sheets.whynot.grain");
    }

    @Test
    @Transactional
    void a_cut_leaves_an_offcut_with_its_cost_and_undoing_it_restores_everything() {
        OrderRef order = PlainOrders.add(jdbc, 1).getFirst();
        SheetId sheet = add(700, 400, BIRCH, "5.60");
        Suggestion place = finder.suggest(A4).getFirst();
        holds.hold(sheet, order, place.placement(), A4.size(), "Robin");
        Cut cut = cut(sheet);
        assertThat(cut.offcuts()).isNotEmpty();
        Sheet offcut = rack.find(cut.offcuts().getFirst()).orElseThrow();
        assertThat(offcut.state()).isEqualTo(SheetState.FREE);
        assertThat(offcut.cost().isPositive()).isTrue();
        assertThat(rack.find(sheet).orElseThrow().state()).isEqualTo(SheetState.USED);
        assertThat(rack.cutsOf(order.id())).hasSize(1);
        holds.undo(cut.id(), "Robin");
        assertThat(rack.find(sheet).orElseThrow().state()).isEqualTo(SheetState.RESERVED);
        assertThat(rack.find(offcut.id()).orElseThrow().state()).isEqualTo(SheetState.WITHDRAWN);
        assertThat(rack.cutsOf(order.id())).isEmpty();
        holds.release(sheet, "Robin");
        assertThat(rack.find(sheet).orElseThrow().state()).isEqualTo(SheetState.FREE);
        assertThat(rack.history(sheet))
                .extracting(line -> line.what().key())
                .containsExactly(
                        "sheets.history.released",
                        "sheets.history.undone",
                        "sheets.history.cut",
                        "sheets.history.reserved",
                        "sheets.history.entered");
    }

    @Test
    @Transactional
    void an_offcut_that_is_in_use_keeps_its_cut_from_being_undone() {
        OrderRef order = PlainOrders.add(jdbc, 1).getFirst();
        SheetId sheet = add(700, 400, BIRCH, "5.60");
        holds.hold(sheet, order, new Placement(0, 0, 0), A4.size(), "Robin");
        Cut cut = cut(sheet);
        rack.scrap(cut.offcuts().getFirst(), "split", "Robin");
        assertThatThrownBy(() -> holds.undo(cut.id(), "Robin"))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().key()).isEqualTo("sheets.undo.used"));
    }

    @Test
    @Transactional
    void an_offcut_drawn_outside_the_remainder_is_refused() {
        OrderRef order = PlainOrders.add(jdbc, 1).getFirst();
        SheetId sheet = add(700, 400, BIRCH, "5.60");
        holds.hold(sheet, order, new Placement(0, 0, 0), A4.size(), "Robin");
        Outline wrong =
                Outline.of(List.of(new Point(300, 0), new Point(600, 0), new Point(600, 200), new Point(300, 200)));
        assertThatThrownBy(() -> holds.cut(sheet, List.of(wrong), "B2", "Robin"))
                .isInstanceOf(Refused.class);
    }

    @Test
    @Transactional
    void the_rack_is_listed_by_what_fits() {
        add(500, 400, BIRCH, "1.00");
        add(200, 100, BIRCH, "1.00");
        RackFilter filter = new RackFilter(
                "",
                java.util.Optional.empty(),
                java.util.Optional.empty(),
                java.util.Optional.of(A4.size()),
                java.util.Set.of(SheetState.FREE));
        int held = rack.count(filter);
        assertThat(rack.list(filter, 0, 100))
                .hasSize(held)
                .allMatch(s -> s.outline().bounds().longerSide().mm() >= 319);
    }

    @Test
    @Transactional
    void the_history_of_a_sheet_cannot_be_rewritten() {
        SheetId sheet = add(500, 400, BIRCH, "1.00");
        assertThatThrownBy(() -> jdbc.sql("delete from sheet_history where sheet_id = :id")
                        .param("id", sheet.value())
                        .update())
                .isInstanceOf(DataAccessException.class);
    }
}
