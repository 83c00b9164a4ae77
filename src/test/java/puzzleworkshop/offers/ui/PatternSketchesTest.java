package puzzleworkshop.offers.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.ui.OrdersView;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PersonalShapes;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.ui.SketchDesk;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PatternSketchesTest extends SpringBrowserlessTest {

    private static final PatternSpec HEART = PatternSpec.of(Size.mm(200, 150), new PieceGrid(8, 6), 7)
            .withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.HEART))
            .withLayout(new PieceLayout(true, List.of(new KeptWhole(Point.of(200 / 3.0, 60.1), 31 / 7.0, 17 / 3.0))));

    @Autowired
    DataSource database;

    @Autowired
    SketchDesk desk;

    @Autowired
    Machines machines;

    @Autowired
    SheetRack rack;

    @Autowired
    Workshop workshop;

    @BeforeEach
    void a_machine_and_a_board() {
        CleanDatabase.now(database);
        machines.save(Machine.usual("Laser", workshop.currency()));
        rack.add(
                Outline.rectangle(Size.mm(400, 300)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of("2", workshop.currency().getCurrencyCode()),
                "test");
    }

    @Test
    void a_sketch_has_time_and_price_and_one_that_takes_longer_costs_more() {
        SketchDesk.Priced few = desk.price(HEART, IntendedAge.FROM_6);
        assertThat(few.laser()).isPresent();
        assertThat(few.price()).isPresent();
        assertThat(few.complaints()).isEmpty();
        assertThat(few.burntMm().orElseThrow()).isBetween(0.02, 1.0);
        PatternSpec many = PatternSpec.of(Size.mm(200, 150), new PieceGrid(15, 11), 7);
        assertThat(desk.price(many, IntendedAge.FROM_6).price()).isNotEqualTo(few.price());
    }

    @Test
    void an_order_of_a_sketch_opens_with_all_of_it_filled_in() {
        PersonalShape one = PersonalShapes.heart(Point.of(60.1, 75.3), Length.mm(30));
        PersonalShape two = PersonalShapes.heart(Point.of(140.7, 75.3), Length.mm(30));
        PatternSpec sketch = HEART.withShapes(List.of(one, two));
        desk.order(sketch, IntendedAge.FROM_3);
        assertThat(getCurrentView()).isInstanceOf(NewOrderView.class);
        PuzzleForm.Form form = find(PuzzleForm.class).single().read().orElseThrow();
        assertThat(form.puzzle().finished()).isEqualTo(sketch.size());
        assertThat(form.puzzle().seed()).isEqualTo(7);
        assertThat(form.puzzle().outline().kind()).isEqualTo(PuzzleEdge.Kind.HEART);
        assertThat(form.puzzle().layout()).isEqualTo(sketch.layout());
        assertThat(form.puzzle().shapes()).containsExactly(one, two);
        assertThat(form.puzzle().age()).isEqualTo(IntendedAge.FROM_3);
        assertThat(PieceGrid.within(
                        form.puzzle().outline(),
                        form.puzzle().finished(),
                        form.puzzle().pieces(),
                        Length.mm(10)))
                .isEqualTo(sketch.grid());
        // once: the next new order begins empty
        navigate(OrdersView.class);
        navigate(NewOrderView.class);
        assertThat(find(PuzzleForm.class).single().read().orElseThrow().puzzle().shapes())
                .isEmpty();
    }
}
