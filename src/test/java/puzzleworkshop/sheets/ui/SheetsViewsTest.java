package puzzleworkshop.sheets.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.tabs.Tabs;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextField;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.boards.ui.FindSheetView;
import puzzleworkshop.boards.ui.SheetView;
import puzzleworkshop.boards.ui.WeekSheetsView;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.RackRules;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.list.StockTaking;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainOrders;

/** The rack's screens without a browser: what they ask of the rack, and what they say. */
@DatabaseTest
@Transactional
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class SheetsViewsTest extends SpringBrowserlessTest {

    @Autowired
    SheetRack rack;

    @Autowired
    SheetHolds holds;

    @Autowired
    RackSettings settings;

    @Autowired
    Machines machines;

    @Autowired
    StockTaking taking;

    @Autowired
    DataSource database;

    @Test
    void two_lengths_make_a_sheet_and_the_next_piece_is_ready() {
        navigate(EnterSheetView.class);
        type(310, 220);
        press("Take it in");
        assertThat(rack.list(RackFilter.inRack(), 0, 10))
                .singleElement()
                .satisfies(sheet -> assertThat(sheet.outline()).isEqualTo(Outline.rectangle(Size.mm(310, 220))));
        assertThat(lengths().subList(0, 2)).allMatch(field -> field.getValue() == null);
        press("Mistyped");
        assertThat(rack.count(RackFilter.inRack())).isZero();
    }

    @Test
    void a_missing_length_is_marked_and_nothing_is_taken_in() {
        navigate(EnterSheetView.class);
        lengths().getFirst().setValue(Length.mm(310));
        press("Take it in");
        assertThat(lengths().get(1).isInvalid()).isTrue();
        assertThat(lengths().getFirst().getValue()).isEqualTo(Length.mm(310));
        assertThat(rack.count(RackFilter.inRack())).isZero();
    }

    @Test
    void a_board_no_bed_takes_is_refused_where_none_is_sawn_first_and_one_along_the_longer_bed_is_not() {
        RackRules rules = settings.rules();
        settings.save(new RackRules(
                rules.largest(),
                rules.kerf(),
                rules.mostBow(),
                rules.thicknessSlack(),
                rules.offcutCost(),
                rules.share(),
                false));
        machines.save(laser("Square", Size.mm(400, 400)));
        machines.save(laser("Long", Size.mm(300, 900)));
        navigate(EnterSheetView.class);
        type(500, 350);
        press("Take it in");
        assertThat(texts()).anyMatch(words -> words.startsWith("This board measures 500 × 350 mm"));
        assertThat(rack.count(RackFilter.inRack())).isZero();
        type(880, 290);
        press("Take it in");
        assertThat(rack.count(RackFilter.inRack())).isOne();
    }

    @Test
    void steps_that_cannot_be_an_elbow_are_refused_in_a_sentence() {
        navigate(EnterSheetView.class);
        find(Tabs.class).single().setSelectedIndex(2);
        type(400, 300, 450, 100);
        press("Take it in");
        assertThat(texts()).anyMatch(words -> words.contains("smaller than the whole"));
        type(400, 300, 250, 100);
        press("Take it in");
        assertThat(rack.list(RackFilter.inRack(), 0, 10)
                        .getFirst()
                        .outline()
                        .area()
                        .mm2())
                .isEqualTo(400 * 300 - 250 * 100);
    }

    @Test
    void a_blank_is_offered_the_sheet_that_loses_least_and_why_not_another_is_answered() {
        SheetId large = add(600, 400);
        SheetId small = add(330, 245);
        navigate(FindSheetView.class);
        type(319, 232);
        assertThat(find(Span.class)
                        .withClassName("sheets-number")
                        .all()
                        .getFirst()
                        .getText())
                .isEqualTo(small.toString());
        IntegerField whyNot = find(IntegerField.class).single();
        whyNot.setValue(Math.toIntExact(large.value()));
        assertThat(texts()).anyMatch(words -> words.contains("the rack would lose"));
        whyNot.setValue(99_999);
        assertThat(texts()).anyMatch(words -> words.contains("no sheet 99999"));
    }

    @Test
    void a_cut_leaves_what_was_kept_and_can_be_taken_back() {
        SheetId sheet = add(400, 300);
        PlainOrders.withIds(database, 7001);
        holds.hold(
                sheet,
                new OrderRef(new OrderId(7001), "2026-16001"),
                new Placement(0, 0, 0),
                Size.mm(222, 172),
                "Robin");
        navigate(SheetView.class, sheet.value());
        assertThat(find(Span.class).all()).anyMatch(words -> words.getText().equals("came in today"));
        press("The blank is cut");
        assertThat(rack.find(sheet).orElseThrow().state()).isEqualTo(SheetState.USED);
        assertThat(rack.children(sheet)).hasSize(1);
        assertThat(find(Anchor.class).all()).anyMatch(link -> link.getText().equals("Labels for them (PDF)"));
        press("The cut was a mistake: take it back");
        assertThat(rack.find(sheet).orElseThrow().state()).isEqualTo(SheetState.RESERVED);
    }

    @Test
    void a_number_that_is_no_sheet_is_refused_beside_the_field_while_stock_is_taken() {
        SheetId there = add(330, 245);
        SheetId lost = add(400, 300);
        navigate(StockTakeView.class);
        press("Start the walk");
        TextField number = find(TextField.class).all().stream()
                .filter(field -> "Number on the label, typed or scanned".equals(field.getLabel()))
                .findFirst()
                .orElseThrow();
        number.setValue("99999");
        press("It is here");
        assertThat(number.isInvalid()).isTrue();
        assertThat(number.getErrorMessage()).contains("99999");
        number.setValue("https://rack.example/sheets/number/" + there);
        press("It is here");
        assertThat(taking.missing(0, 10)).containsExactly(lost);
        press("End the walk");
        assertThat(find(H2.class).all()).anyMatch(head -> head.getText().equals("How the walk ended"));
        assertThat(rack.find(lost).orElseThrow().state())
                .as("nothing leaves unasked")
                .isEqualTo(SheetState.FREE);
    }

    @Test
    void the_page_of_the_label_ticks_the_sheet_only_while_stock_is_taken() {
        SheetId sheet = add(330, 245);
        navigate(SheetView.class, sheet.value());
        assertThat(find(Button.class).withText("It is here").exists()).isFalse();
        taking.start("Kim");
        navigate(SheetView.class, sheet.value());
        press("It is here");
        assertThat(taking.missing(0, 10)).isEmpty();
    }

    @Test
    void a_waiting_week_without_orders_says_so() {
        navigate(WeekSheetsView.class);
        assertThat(find(H2.class).all()).anyMatch(head -> head.getText().equals("No order waits for a sheet"));
    }

    private SheetId add(double width, double height) {
        return rack.add(
                Outline.rectangle(Size.mm(width, height)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of("2.00", "EUR"),
                "Robin");
    }

    private static Machine laser(String name, Size bed) {
        Machine usual = Machine.usual(name, Currency.getInstance("EUR"));
        return new Machine(
                0,
                name,
                bed,
                usual.beam(),
                usual.motion(),
                usual.bowLimit(),
                usual.setUp(),
                usual.passPause(),
                usual.costs(),
                false,
                false);
    }

    private List<LengthField> lengths() {
        return find(LengthField.class).all();
    }

    private void type(double... millimetres) {
        List<LengthField> fields = lengths();
        Arrays.setAll(millimetres, i -> {
            fields.get(i).setValue(Length.mm(millimetres[i]));
            return millimetres[i];
        });
    }

    private void press(String words) {
        test(find(Button.class).withText(words).single()).click();
    }

    private List<String> texts() {
        return find(Paragraph.class).all().stream().map(Paragraph::getText).toList();
    }
}
