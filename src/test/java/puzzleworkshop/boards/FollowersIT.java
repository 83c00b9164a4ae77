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
import puzzleworkshop.geometry.fit.RectanglePlaces;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.Cut;
import puzzleworkshop.sheets.Reservation;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.support.DatabaseTest;

/** Several orders' blanks on one sheet: held for the first, the next on what it leaves. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class FollowersIT {

    @Autowired
    OrderBoards boards;

    @Autowired
    BoardCuts cuts;

    @Autowired
    BlanksWaiting blanks;

    @Autowired
    SheetRack rack;

    @Autowired
    WhatIsLeft left;

    @Autowired
    JdbcClient jdbc;

    private SheetId sheet;
    private OrderId first;
    private OrderId second;
    private OrderId third;

    @BeforeEach
    void a_sheet_held_for_the_first_of_three_orders() {
        BoardOrders orders = new BoardOrders(jdbc, rack);
        sheet = orders.sheet(600, 400);
        first = orders.confirmed(sheet);
        second = orders.confirmed(sheet);
        third = orders.confirmed(sheet);
        boards.hold(first, "Robin");
    }

    @Test
    void when_the_first_is_cut_the_next_are_held_on_what_is_left_and_all_comes_back_with_it() {
        follow(second, 300, 200);
        follow(third, 0, 200);
        assertThat(following()).hasSize(2);
        Cut cut = cuts.cut(first, Instant.EPOCH, "Robin").getFirst();
        SheetId offcut = cut.offcuts().getFirst();
        Reservation held = rack.find(offcut).orElseThrow().reservation().orElseThrow();
        assertThat(held.order().id()).isEqualTo(second);
        assertThat(RectanglePlaces.accepts(
                        rack.find(offcut).orElseThrow().outline(), BoardOrders.BLANK, held.placement()))
                .isTrue();
        assertThat(following()).singleElement().satisfies(next -> {
            assertThat(next.sheet()).isEqualTo(offcut);
            assertThat(next.order().id()).isEqualTo(third);
        });
        Cut next = cuts.cut(second, Instant.EPOCH, "Robin").getFirst();
        assertThat(rack.heldFor(third)).hasSize(1);
        assertThat(following()).isEmpty();

        cuts.undo(next.id(), "Robin");
        assertThat(rack.heldFor(third)).isEmpty();
        assertThat(following())
                .singleElement()
                .satisfies(blank -> assertThat(blank.sheet()).isEqualTo(offcut));
        assertThat(rack.heldFor(second)).hasSize(1);
    }

    @Test
    void what_another_blank_waits_for_is_proposed_to_be_kept_at_the_cut() {
        follow(second, 300, 200);
        assertThat(left.of(sheet)).anySatisfy(part -> {
            assertThat(part.keep()).isTrue();
            assertThat(part.why().key()).isEqualTo("sheets.keep.follows");
        });
    }

    @Test
    void a_first_that_gives_the_sheet_up_leaves_it_to_the_next() {
        follow(second, 300, 200);
        boards.release(sheet, "Robin");
        assertThat(rack.heldFor(second))
                .singleElement()
                .satisfies(held -> assertThat(held.id()).isEqualTo(sheet));
    }

    @Test
    void a_sheet_that_is_spoiled_leaves_nothing_to_the_next() {
        follow(second, 300, 200);
        cuts.spoil(first, "charred", "Robin");
        assertThat(rack.heldFor(second)).isEmpty();
        assertThat(following()).isEmpty();
        assertThat(blanks.waiting()).anyMatch(blank -> blank.order().id().equals(second));
    }

    @Test
    void a_place_that_another_blank_takes_is_refused_the_width_of_the_cut_included() {
        assertThatThrownBy(() -> follow(second, 100, 100)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> follow(second, 222, 0)).isInstanceOf(Refused.class);
        follow(second, 223, 0);
        assertThatThrownBy(() -> follow(third, 260, 20)).isInstanceOf(Refused.class);
    }

    @Test
    void an_order_whose_place_was_not_kept_waits_again() {
        follow(second, 300, 200);
        cuts.cut(sheet, List.of(), "A1", "Robin");
        assertThat(following()).isEmpty();
        assertThat(rack.heldFor(second)).isEmpty();
        assertThat(blanks.waiting()).anyMatch(blank -> blank.order().id().equals(second));
    }

    private void follow(OrderId order, double x, double y) {
        boards.follow(new OrderBoards.Place(order, 1, sheet, new Placement(x, y, 0)), "Robin");
    }

    /** Of the orders of this test; other tests leave theirs. */
    private List<FollowingBlank> following() {
        return blanks.following().stream()
                .filter(next -> next.order().id().value() >= first.value())
                .toList();
    }
}
