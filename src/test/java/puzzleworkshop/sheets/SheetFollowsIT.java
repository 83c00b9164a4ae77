package puzzleworkshop.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.fit.RectanglePlaces;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.DatabaseTest;

/** Several orders' blanks on one sheet: held for the first, the next on what it leaves. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class SheetFollowsIT {

    private static final Size BLANK = Size.mm(222, 172);

    @Autowired
    SheetRack rack;

    @Autowired
    WaitingBlanks waiting;

    @Autowired
    JdbcClient jdbc;

    private SheetId sheet;
    private long first;

    @BeforeEach
    void a_sheet_held_for_the_first_of_three_orders() {
        sheet = rack.add(
                Outline.rectangle(Size.mm(600, 400)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of("6.00", "EUR"),
                "Robin");
        first = OrderRows.add(jdbc, 3);
        jdbc.sql("""
                update customer_order set state = 'CONFIRMED', confirmed_at = now(), next_stage = 'PRINT',
                    promised_on = '2027-01-01' where id >= :first
                """).param("first", first).update();
        jdbc.sql("""
                insert into order_blank (order_id, position, across, down, width_mm, height_mm, x_mm, y_mm, degrees, sheet_id)
                select id, 1, 1, 1, 222, 172, 0, 0, 0, :sheet from customer_order where id >= :first
                """).param("sheet", sheet.value()).param("first", first).update();
        rack.reserve(sheet, first, new Placement(0, 0, 0), BLANK, "Robin");
    }

    @Test
    void when_the_first_is_cut_the_next_are_held_on_what_is_left_and_all_comes_back_with_it() {
        rack.follow(sheet, first + 1, 1, new Placement(300, 200, 0), BLANK, "Robin");
        rack.follow(sheet, first + 2, 1, new Placement(0, 200, 0), BLANK, "Robin");
        assertThat(following()).hasSize(2);
        Cut cut = rack.cut(first, "Robin").getFirst();
        SheetId offcut = cut.offcuts().getFirst();
        Reservation held = rack.find(offcut).orElseThrow().reservation().orElseThrow();
        assertThat(held.orderId()).isEqualTo(first + 1);
        assertThat(RectanglePlaces.accepts(rack.find(offcut).orElseThrow().outline(), BLANK, held.placement()))
                .isTrue();
        assertThat(following()).singleElement().satisfies(next -> {
            assertThat(next.sheet()).isEqualTo(offcut);
            assertThat(next.orderId()).isEqualTo(first + 2);
        });
        Cut second = rack.cut(first + 1, "Robin").getFirst();
        assertThat(rack.reservedFor(first + 2)).hasSize(1);
        assertThat(following()).isEmpty();

        rack.undo(second.id(), "Robin");
        assertThat(rack.reservedFor(first + 2)).isEmpty();
        assertThat(following())
                .singleElement()
                .satisfies(next -> assertThat(next.sheet()).isEqualTo(offcut));
        assertThat(rack.reservedFor(first + 1)).hasSize(1);
    }

    @Test
    void a_first_that_gives_the_sheet_up_leaves_it_to_the_next() {
        rack.follow(sheet, first + 1, 1, new Placement(300, 200, 0), BLANK, "Robin");
        rack.release(first, "Robin");
        assertThat(rack.reservedFor(first + 1))
                .singleElement()
                .satisfies(held -> assertThat(held.id()).isEqualTo(sheet));
    }

    @Test
    void a_place_that_another_blank_takes_is_refused_the_width_of_the_cut_included() {
        assertThatThrownBy(() -> rack.follow(sheet, first + 1, 1, new Placement(100, 100, 0), BLANK, "Robin"))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> rack.follow(sheet, first + 1, 1, new Placement(222, 0, 0), BLANK, "Robin"))
                .isInstanceOf(Refused.class);
        rack.follow(sheet, first + 1, 1, new Placement(223, 0, 0), BLANK, "Robin");
        assertThatThrownBy(() -> rack.follow(sheet, first + 2, 1, new Placement(260, 20, 0), BLANK, "Robin"))
                .isInstanceOf(Refused.class);
    }

    @Test
    void an_order_whose_place_was_not_kept_waits_again() {
        rack.follow(sheet, first + 1, 1, new Placement(300, 200, 0), BLANK, "Robin");
        rack.cut(sheet, List.of(), "A1", "Robin");
        assertThat(following()).isEmpty();
        assertThat(rack.reservedFor(first + 1)).isEmpty();
        assertThat(waiting.waiting()).anyMatch(blank -> blank.orderId() == first + 1);
    }

    /** Of the orders of this test; other tests leave theirs. */
    private List<FollowingBlank> following() {
        return rack.following().stream().filter(next -> next.orderId() >= first).toList();
    }
}
