package puzzleworkshop.bench.ui.pieces;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.dom.DomEvent;
import com.vaadin.flow.internal.JacksonUtils;
import com.vaadin.flow.internal.nodefeature.ElementListenerMap;
import java.awt.image.BufferedImage;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.bench.BlankScale;
import puzzleworkshop.bench.BlankScale.Reading;
import puzzleworkshop.bench.PiecePrint;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.PieceOrders;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.judged.LostPiece;
import puzzleworkshop.pattern.mesh.GridPlaces;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PieceAgainTest extends SpringBrowserlessTest {

    @Autowired
    BeanFactory beans;

    @Autowired
    PatternCache patterns;

    @Autowired
    PieceAgainParts parts;

    @Autowired
    PieceAgainPanel panel;

    @Autowired
    PiecePrint prints;

    @Autowired
    BlankScale scale;

    @Autowired
    WeekPlan plan;

    @Autowired
    Formatter figures;

    private Order order;
    private CutPattern pattern;

    @BeforeEach
    void an_order_with_a_picture_and_a_board() {
        order = new BenchOrders(beans).confirmed("Ida Lund", plan.today().plusDays(20), 10);
        pattern = patterns.of(order.puzzle().pattern());
    }

    @Test
    void row_and_place_bring_cut_file_print_and_a_scrap() {
        PieceAgain again = new PieceAgain(order, pattern, parts, figures);
        com.vaadin.flow.component.UI.getCurrent().add(again);
        IntegerField row = field("Row, from the top");
        IntegerField column = field("Piece in the row, from the left");
        test(row).setValue(2);
        test(column).setValue(3);
        int number = GridPlaces.piece(pattern, 2, 3).orElseThrow().number();
        assertThat(find(Paragraph.class).all())
                .extracting(Paragraph::getText)
                .anyMatch(text -> text.startsWith("Piece " + number + ","));
        assertThat(find(com.vaadin.flow.component.html.Anchor.class).all())
                .extracting(anchor -> anchor.getElement().getAttribute("download"))
                .contains(order.number() + "-piece-" + number + ".svg", order.number() + "-piece-" + number + ".pdf");
    }

    /** Decided with a complaint: nobody has to remember to say it a second time. */
    @Test
    void a_piece_that_was_promised_for_nothing_is_priced_so_from_the_start() {
        com.vaadin
                .flow
                .component
                .UI
                .getCurrent()
                .add(panel.show(order, () -> {}).orElseThrow());
        Details details = find(Details.class).withId(PieceOrders.PLACE).single();
        details.getElement()
                .getNode()
                .getFeature(ElementListenerMap.class)
                .fireEvent(
                        new DomEvent(details.getElement(), PieceOrders.FOR_NOTHING, JacksonUtils.createObjectNode()));
        details.setOpened(true);
        test(field("Row, from the top")).setValue(2);
        test(field("Piece in the row, from the left")).setValue(3);
        assertThat(find(Checkbox.class).all())
                .filteredOn(box -> box.getLabel().startsWith("The customer pays nothing"))
                .singleElement()
                .returns(true, Checkbox::getValue);
    }

    /** PDFBox reads the page back: as large as piece and overhang, and printed all over. */
    @Test
    void the_print_of_a_piece_is_as_large_as_the_piece_and_its_overhang() throws Exception {
        LostPiece lost =
                LostPiece.of(pattern, 1, LostPiece.Today.withKerf(pattern.spec().kerf()));
        byte[] pdf = prints.pdf(order.picture().orElseThrow(), order.puzzle().finished(), lost, Length.mm(3));
        try (PDDocument read = Loader.loadPDF(pdf)) {
            double mm = 25.4 / 72;
            assertThat(read.getPage(0).getMediaBox().getWidth() * mm)
                    .isCloseTo(lost.inPuzzle().width() + 6, Assertions.within(0.01));
            assertThat(read.getPage(0).getMediaBox().getHeight() * mm)
                    .isCloseTo(lost.inPuzzle().height() + 6, Assertions.within(0.01));
            BufferedImage page = new PDFRenderer(read).renderImageWithDPI(0, 100);
            int bare = 0;
            for (int x = 2; x < page.getWidth() - 2; x++) {
                for (int y = 2; y < page.getHeight() - 2; y++) {
                    bare += (page.getRGB(x, y) & 0xFFFFFF) == 0xFFFFFF ? 1 : 0;
                }
            }
            assertThat(bare).isZero();
        }
    }

    @Test
    void the_last_weighing_of_a_blank_counts_and_one_that_cannot_be_is_refused() {
        assertThat(scale.lastFor(order.id())).isEmpty();
        scale.weighed(order.id(), new Reading(151.2, 0.1), "Robin");
        scale.weighed(order.id(), new Reading(150.9, 0.1), "Robin");
        assertThat(scale.lastFor(order.id())).isEqualTo(Optional.of(new Reading(150.9, 0.1)));
        assertThat(scale.usualStep()).contains(0.1);
        // as large as it was on the scale, whatever a blank of today would be
        Reading sized = new Reading(150.9, 0.1, Optional.of(Size.mm(322, 222)));
        scale.weighed(order.id(), sized, "Robin");
        assertThat(scale.lastFor(order.id())).contains(sized);
        // 0.322 m × 0.222 m × 3 mm of 680 kg/m³, by hand: 145.8 g
        assertThat(ofBlank(145.8).unlikelyDensity(Length.mm(3))).isEmpty();
        assertThat(ofBlank(1458).unlikelyDensity(Length.mm(3)).orElseThrow()).isCloseTo(6800, Assertions.within(10.0));
        assertThat(ofBlank(30).unlikelyDensity(Length.mm(3))).isPresent();
        assertThatThrownBy(() -> scale.weighed(order.id(), new Reading(0, 0.1), "Robin"))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> scale.weighed(order.id(), new Reading(150, 0), "Robin"))
                .isInstanceOf(Refused.class);
    }

    private static Reading ofBlank(double grams) {
        return new Reading(grams, 0.1, Optional.of(Size.mm(322, 222)));
    }

    private IntegerField field(String label) {
        return find(IntegerField.class).all().stream()
                .filter(each -> label.equals(each.getLabel()))
                .findFirst()
                .orElseThrow();
    }
}
