package puzzleworkshop.offers.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.UI;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.ui.CropEditor;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.preview.PictureEdges;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.shapes.PictureContour;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;

/** A marked place whose edge is cut, in an order that is opened again and framed otherwise. */
@DatabaseTest
@Tag("slow")
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class FramedOtherwiseIT extends SpringBrowserlessTest {

    @Autowired
    BeanFactory beans;

    @Autowired
    DataSource database;

    @Autowired
    WeekPlan plan;

    @Autowired
    PictureEdges edges;

    @Autowired
    Pictures pictures;

    private Order order;

    @BeforeEach
    void an_order_with_a_place_whose_edge_is_cut() {
        CleanDatabase.now(database);
        KeptWhole place = KeptWhole.face(Point.of(80, 70), Length.mm(40));
        order = new BenchOrders(beans)
                .waitingForApproval("Mia Holm", plan.today().plusDays(20), picture -> {
                    PictureContour found = edges.around(place, picture.framed(), picture.finished());
                    return PatternSpec.of(picture.finished(), new PieceGrid(6, 4), 5)
                            .withShapes(List.of(new PersonalShape("face", found.outline(), true)));
                });
    }

    @Test
    void opened_again_it_is_the_same_to_the_last_bit() {
        open();
        assertThat(form().read().orElseThrow().puzzle().shapes())
                .isEqualTo(order.puzzle().pattern().shapes());
        assertThat(form().read().orElseThrow().puzzle().layout())
                .isEqualTo(order.puzzle().pattern().layout());
    }

    /** Half the picture is twice as large on the puzzle, about the middle that is seen; the edge goes along with it. */
    @Test
    void framed_more_closely_the_edge_grows_with_what_it_was_drawn_around() {
        open();
        Picture picture = pictures.get(order.picture().orElseThrow().picture());
        Crop before = order.picture().orElseThrow().crop();
        Crop closer = new Crop(
                before.left() + before.width() / 4,
                before.top() + before.height() / 4,
                before.width() / 2,
                before.height() / 2,
                before.quarterTurns(),
                before.fit(),
                before.borderColour(),
                before.edge());
        assertThat(closer.hasAspect(picture, order.puzzle().finished().aspect()))
                .isTrue();
        find(CropEditor.class).single().setCrop(closer);
        settle();
        PersonalShape was = order.puzzle().pattern().shapes().getFirst();
        PersonalShape now = form().read().orElseThrow().puzzle().shapes().getFirst();
        Bounds old = was.outline().bounds();
        Bounds grown = now.outline().bounds();
        Point middle = Point.of(
                order.puzzle().finished().width().mm() / 2,
                order.puzzle().finished().height().mm() / 2);
        assertThat(grown.width() / old.width()).isBetween(1.999, 2.001);
        assertThat(grown.height() / old.height()).isBetween(1.999, 2.001);
        assertThat(grown.centre().distanceTo(middle.towards(old.centre(), 2))).isLessThan(0.01);
    }

    private PuzzleForm form() {
        return find(PuzzleForm.class).single();
    }

    private void open() {
        UI.getCurrent().navigate(NewOrderView.class, order.number());
        settle();
    }

    private void settle() {
        for (int i = 0; i < 4000; i++) {
            List<NewOrderView> pages = find(NewOrderView.class).all();
            if (pages.isEmpty() || !pages.getFirst().hasClassName("neworder-working")) {
                return;
            }
            try {
                Thread.sleep(15);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        throw new AssertionError("No answer came.");
    }
}
