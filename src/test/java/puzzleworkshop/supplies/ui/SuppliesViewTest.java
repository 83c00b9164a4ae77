package puzzleworkshop.supplies.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.LaserFacts.Adhesive;
import puzzleworkshop.supplies.LaserFacts.Pvc;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainOrders;
import puzzleworkshop.support.ScreenTest;
import puzzleworkshop.support.StillHtml;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SuppliesViewTest extends ScreenTest {

    private static final OrderRef ORDER = new OrderRef(new OrderId(5), "2026-9005");

    @Autowired
    Supplies supplies;

    @Autowired
    DataSource database;

    @BeforeEach
    void an_empty_shelf() {
        CleanDatabase.now(database);
        PlainOrders.withIds(database, ORDER.id().value());
    }

    @Test
    void an_empty_shelf_begins_with_the_usual_supplies_none_of_which_may_meet_the_laser_unread() {
        navigate(SuppliesView.class);
        test(find(Button.class).withText("Begin with the usual supplies").single())
                .click();
        assertThat(supplies.items()).hasSize(8).allMatch(item -> item.stock().signum() == 0);
        assertThat(supplies.usual(SupplyKind.STICKER_PAPER).orElseThrow().height())
                .as("A4, ISO 216")
                .contains(Length.mm(297));
        assertThat(supplies.items().stream().filter(item -> item.kind().isUnderLaser()))
                .hasSize(3)
                .allMatch(item -> item.forbiddenAtLaser().isPresent());
    }

    @Test
    void a_new_roll_is_not_as_wide_as_a_sheet_of_paper() {
        navigate(SuppliesView.class);
        test(find(Button.class).withText("New supply").single()).click();
        Select<?> what = find(Select.class).all().stream()
                .filter(select -> "What for".equals(select.getLabel()))
                .findFirst()
                .orElseThrow();
        LengthField width = find(LengthField.class).withCaption("Width").single();
        assertThat(width.getValue()).as("A4, ISO 216").isEqualTo(Length.mm(210));
        test(what).selectItem("Masking tape");
        assertThat(width.getValue()).isNull();
        test(what).selectItem("Sticker paper");
        assertThat(width.getValue()).isEqualTo(Length.mm(210));
    }

    @Test
    void a_purchase_is_booked_with_its_supplier_and_price_history_opens() {
        SupplyId roll = tape(Pvc.FREE);
        navigate(SuppliesView.class);
        pressSpoken("Bought: Masking tape");
        number("How many").setValue(new BigDecimal("2"));
        number("Paid for all").setValue(new BigDecimal("20"));
        test(find(Button.class).withText("Book").single()).click();
        assertThat(supplies.find(roll).orElseThrow().stock()).isEqualByComparingTo("100");
        assertThat(supplies.find(roll).orElseThrow().unitCost().amount()).isEqualByComparingTo("0.20");
        pressSpoken("Open: Masking tape");
        assertThat(find(ListItem.class).all()).anyMatch(line -> line.getText().contains("€10.00 for a roll of 50 m"));
    }

    @Test
    void more_than_there_is_cannot_be_spoiled_and_what_was_typed_stays() {
        SupplyId roll = tape(Pvc.FREE);
        supplies.buy(BookingKey.fresh(), roll, BigDecimal.ONE, Money.of("10", "EUR"), "", "mara");
        navigate(SuppliesView.class);
        pressSpoken("Spoiled: Masking tape");
        number("How much").setValue(new BigDecimal("51"));
        TextField why = find(TextField.class).all().stream()
                .filter(text -> "Why".equals(text.getLabel()))
                .findFirst()
                .orElseThrow();
        why.setValue("fell into the water");
        test(find(Button.class).withText("Book").single()).click();
        assertThat(supplies.find(roll).orElseThrow().stock()).isEqualByComparingTo("50");
        assertThat(why.getValue()).isEqualTo("fell into the water");
        number("How much").setValue(new BigDecimal("50"));
        test(find(Button.class).withText("Book").single()).click();
        assertThat(supplies.find(roll).orElseThrow().stock()).isEqualByComparingTo("0");
    }

    @Test
    void a_shelf_that_was_used_below_zero_says_so() {
        SupplyId roll = tape(Pvc.FREE);
        supplies.buy(BookingKey.fresh(), roll, BigDecimal.ONE, Money.of("10", "EUR"), "", "mara");
        supplies.useKnowingly(roll, new BigDecimal("60"), ORDER, "a second roll lay behind the press", "mara");
        navigate(SuppliesView.class);
        assertThat(find(Verdict.class).all())
                .anyMatch(verdict -> verdict.words().contains("Below zero"));
        assertThat(find(Span.class).all()).anyMatch(text -> text.getText().contains("× roll of 50 m: Masking tape"));
    }

    @Test
    void the_owners_word_when_to_buy_again_is_typed_kept_and_shown_as_such() {
        SupplyId roll = tape(Pvc.FREE);
        supplies.buy(BookingKey.fresh(), roll, BigDecimal.ONE, Money.of("10", "EUR"), "", "mara");
        navigate(SuppliesView.class);
        pressSpoken("Open: Masking tape");
        test(find(Button.class).withText("Change facts").single()).click();
        number("Buy again at").setValue(new BigDecimal("-1"));
        test(find(Button.class).withText("Save").single()).click();
        assertThat(number("Buy again at").isInvalid()).isTrue();
        number("Buy again at").setValue(new BigDecimal("60"));
        test(find(Button.class).withText("Save").single()).click();
        assertThat(supplies.find(roll).orElseThrow().ownPoint().orElseThrow()).isEqualByComparingTo("60");
        navigate(SuppliesView.class);
        assertThat(StillHtml.words(find(Still.class).all(), "span"))
                .anyMatch(text -> text.contains("buy at 60, as you said"));
        assertThat(find(Verdict.class).all())
                .anyMatch(verdict -> verdict.words().contains("Buy soon"));
    }

    @Test
    void a_count_that_cannot_be_read_is_not_taken_for_not_counted() {
        SupplyId roll = tape(Pvc.FREE);
        navigate(SuppliesView.class);
        test(find(Button.class).withText("Take stock").single()).click();
        typeUnreadable(number("Masking tape"), "4o");
        test(find(Button.class).withText("Book the differences").single()).click();
        assertThat(number("Masking tape").isInvalid()).isTrue();
        number("Masking tape").setValue(new BigDecimal("40"));
        test(find(Button.class).withText("Book the differences").single()).click();
        assertThat(supplies.find(roll).orElseThrow().stock()).isEqualByComparingTo("40");
    }

    @Test
    void vinyl_stands_with_its_danger_on_the_shelf() {
        tape(Pvc.PVC);
        navigate(SuppliesView.class);
        assertThat(find(Paragraph.class).all()).anyMatch(note -> note.getText().contains("hydrogen chloride"));
    }

    private SupplyId tape(Pvc pvc) {
        return supplies.keep(new SupplyItem(
                        Optional.empty(),
                        "Masking tape",
                        SupplyKind.MASKING_TAPE,
                        UseUnit.METRE,
                        Optional.of(Length.mm(200)),
                        Optional.empty(),
                        "roll of 50 m",
                        BigDecimal.valueOf(50),
                        new LaserFacts(pvc, Adhesive.DRY),
                        3,
                        3,
                        true,
                        false,
                        BigDecimal.ZERO,
                        Money.of("0", "EUR")))
                .id()
                .orElseThrow();
    }
}
