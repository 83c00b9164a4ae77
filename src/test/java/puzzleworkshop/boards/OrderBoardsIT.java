package puzzleworkshop.boards;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.SheetTaken;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.support.DatabaseTest;

/** What one order's board commands do to the order, the sheet and the history of both. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class OrderBoardsIT {

    private static final Placement CORNER = new Placement(0, 0, 0);

    @Autowired
    OrderBoards boards;

    @Autowired
    BoardCuts cuts;

    @Autowired
    BlanksWaiting blanks;

    @Autowired
    Orders orders;

    @Autowired
    SheetRack rack;

    @Autowired
    SheetHolds holds;

    @Autowired
    RackSettings settings;

    @Autowired
    JdbcClient jdbc;

    private BoardOrders made;
    private SheetId one;
    private SheetId two;
    private SheetId other;

    @BeforeEach
    void three_sheets() {
        made = new BoardOrders(jdbc, rack);
        one = made.sheet(400, 300);
        two = made.sheet(400, 300);
        other = made.sheet(400, 300);
    }

    @Test
    void an_order_given_up_takes_no_board_any_more() {
        OrderId order = made.confirmed(one);
        orders.cancel(order, "changed their mind", "Mara");
        assertRefused("boards.closed", () -> boards.choose(order, 1, other, CORNER, "Mara"));
        assertRefused("boards.closed", () -> boards.hold(order, "Mara"));
        assertThat(orders.get(order).state()).isEqualTo(OrderState.CANCELLED);
        assertThat(rack.heldFor(order)).isEmpty();
        assertThat(rack.find(other).orElseThrow().isFree()).isTrue();
    }

    @Test
    void a_board_that_comes_for_an_order_given_up_is_refused_and_one_that_came_comes_only_once() {
        settings.save(new BoardOffer(
                0,
                "birch 500 × 400 " + one,
                "birch-ply",
                Grade.CRAFT,
                puzzleworkshop.measure.Length.mm(3),
                Size.mm(500, 400),
                Grain.NONE,
                Money.of("6.40", "EUR"),
                true));
        long offer = settings.offers().stream().mapToLong(BoardOffer::id).max().orElseThrow();
        OrderId order = made.confirmed(one);
        OrderId gone = made.confirmed(one);
        jdbc.sql("update order_blank set sheet_id = null, offer_id = :offer where order_id in (:orders)")
                .param("offer", offer)
                .param("orders", List.of(order.value(), gone.value()))
                .update();
        orders.cancel(gone, "too late", "Mara");
        assertRefused("boards.closed", () -> boards.arrive(gone, 1, "A1", "Mara"));
        settings.save(settings.offer(offer).orElseThrow().withdrawn());
        boards.arrive(order, 1, "A1", "Mara");
        assertThat(rack.heldFor(order))
                .as("also when it is not offered any more")
                .hasSize(1);
        assertRefused("boards.no-offer", () -> boards.arrive(order, 1, "A1", "Mara"));
        assertThat(rack.heldFor(order)).hasSize(1);
        assertThat(rack.heldFor(gone)).isEmpty();
    }

    @Test
    void another_second_board_leaves_the_first_as_it_is() {
        OrderId order = made.confirmed(one, two);
        boards.hold(order, "Mara");
        boards.choose(order, 2, other, CORNER, "Mara");
        assertThat(rack.heldFor(order)).extracting(sheet -> sheet.id()).containsExactly(one, other);
        assertThat(rack.find(two).orElseThrow().isFree()).isTrue();
        assertThat(orderLines(order)).endsWith("boards.history.released", "boards.history.held");
        assertThat(sheetLines(two)).first().isEqualTo("sheets.history.released");
        assertThat(sheetLines(other)).first().isEqualTo("sheets.history.reserved");
    }

    @Test
    void one_sheet_set_free_on_its_own_page_is_told_in_both_histories_and_the_other_stays_held() {
        OrderId order = made.confirmed(one, two);
        boards.hold(order, "Mara");
        boards.release(one, "Ada");
        assertThat(rack.heldFor(order)).extracting(sheet -> sheet.id()).containsExactly(two);
        assertThat(orderLines(order)).last().isEqualTo("boards.history.released");
        assertThat(sheetLines(one)).first().isEqualTo("sheets.history.released");
        assertThat(orders.history(order))
                .anySatisfy(line -> assertThat(line.who()).isEqualTo("Ada"));
        assertThat(blanks.waiting())
                .filteredOn(blank -> blank.order().id().equals(order))
                .singleElement()
                .satisfies(blank -> assertThat(blank.position()).isEqualTo(1));
    }

    @Test
    void a_board_cut_on_its_own_page_counts_at_the_bench_and_the_rest_is_cut_there() {
        OrderId order = made.confirmed(one, two);
        boards.hold(order, "Mara");
        cuts.cut(one, List.of(), "B2", "Ada");
        assertThat(orderLines(order)).last().isEqualTo("boards.history.cut");
        assertThat(cuts.cut(order, Instant.EPOCH, "Ada")).hasSize(1);
        assertThat(cuts.cut(order, Instant.EPOCH, "Ada")).isEmpty();
        assertThat(rack.cutsOf(order)).hasSize(2);
        assertRefused("boards.none-to-cut", () -> cuts.cut(order, Instant.now().plusSeconds(60), "Ada"));
    }

    @Test
    void an_order_with_a_blank_that_has_no_board_is_not_cut() {
        OrderId order = made.confirmed(one, two);
        boards.hold(order, "Mara");
        boards.release(two, "Mara");
        assertRefused("boards.none-to-cut", () -> cuts.cut(order, Instant.EPOCH, "Ada"));
        assertThat(rack.find(one).orElseThrow().state()).isEqualTo(SheetState.RESERVED);
    }

    @Test
    void a_quote_chooses_without_holding_and_is_refused_what_is_taken_when_it_would_hold() {
        OrderId quote = made.quote(one);
        boards.choose(quote, 1, other, CORNER, "Mara");
        assertThat(rack.find(other).orElseThrow().isFree()).isTrue();
        OrderId quicker = made.confirmed(other);
        boards.hold(quicker, "Mara");
        OrderId slower = made.confirmed(one);
        assertThatThrownBy(() -> boards.choose(slower, 1, other, CORNER, "Mara"))
                .isInstanceOf(SheetTaken.class);
        assertThat(blanks.of(slower))
                .singleElement()
                .satisfies(blank -> assertThat(blank.sheet()).contains(one));
    }

    @Test
    void a_cut_taken_back_after_the_order_was_given_up_leaves_the_sheet_free() {
        OrderId order = made.confirmed(one);
        boards.hold(order, "Mara");
        long cut = cuts.cut(one, List.of(), "", "Ada").id();
        orders.cancel(order, "burnt down", "Mara");
        cuts.undo(cut, "Ada");
        assertThat(rack.find(one).orElseThrow().isFree()).isTrue();
        assertThat(rack.heldFor(order)).isEmpty();
    }

    @Test
    void a_cut_is_not_taken_back_from_under_an_order_that_has_gone_on() {
        OrderId order = made.confirmed(one);
        boards.hold(order, "Mara");
        long cut = cuts.cut(one, List.of(), "", "Ada").id();
        jdbc.sql("update customer_order set next_stage = 'FINISH', approved_at = now(), approved_by = 'Ada'"
                        + " where id = :id")
                .param("id", order.value())
                .update();
        assertRefused("boards.undo.gone-on", () -> cuts.undo(cut, "Ada"));
        assertThat(rack.find(one).orElseThrow().isFree()).isFalse();
        jdbc.sql("update customer_order set next_stage = 'CUT' where id = :id")
                .param("id", order.value())
                .update();
        cuts.undo(cut, "Ada");
        assertThat(rack.heldFor(order)).hasSize(1);
    }

    private void assertRefused(String key, org.assertj.core.api.ThrowableAssert.ThrowingCallable command) {
        assertThatThrownBy(command)
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().key()).isEqualTo(key));
    }

    /** Oldest first. */
    private List<String> orderLines(OrderId order) {
        return orders.history(order).reversed().stream()
                .map(line -> line.what().key())
                .toList();
    }

    /** Newest first. */
    private List<String> sheetLines(SheetId sheet) {
        return rack.history(sheet).stream().map(line -> line.what().key()).toList();
    }
}
