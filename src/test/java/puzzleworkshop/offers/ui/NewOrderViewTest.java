package puzzleworkshop.offers.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.AbstractField;
import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.datepicker.DatePicker;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.notification.Notification;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Optional;
import javax.sql.DataSource;
import org.awaitility.Awaitility;
import org.awaitility.core.ThrowingRunnable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.ui.OrdersView;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class NewOrderViewTest extends SpringBrowserlessTest {

    @Autowired
    DataSource database;

    @Autowired
    Orders orders;

    @Autowired
    Supplies supplies;

    @Autowired
    Workshop workshop;

    @BeforeEach
    void an_empty_workshop() {
        CleanDatabase.now(database);
        navigate(NewOrderView.class);
    }

    @Test
    void a_page_on_which_nothing_was_typed_is_left_without_a_question() {
        UI.getCurrent().navigate(OrdersView.class);
        assertThat(getCurrentView()).isInstanceOf(OrdersView.class);
    }

    @Test
    void what_was_typed_is_not_left_behind_without_a_question() {
        TextField contact =
                find(TextField.class).withCaption("E-mail or telephone").single();
        test(contact).setValue("ada@reed.example");
        UI.getCurrent().navigate(OrdersView.class);
        assertThat(getCurrentView()).isInstanceOf(NewOrderView.class);

        test(find(Button.class).withText("Stay here").single()).click();
        assertThat(getCurrentView()).isInstanceOf(NewOrderView.class);
        assertThat(contact.getValue()).isEqualTo("ada@reed.example");
        assertThat(find(Dialog.class).all()).isEmpty();

        UI.getCurrent().navigate(OrdersView.class);
        test(find(Button.class).withText("Leave without saving").single()).click();
        assertThat(getCurrentView()).isInstanceOf(OrdersView.class);
    }

    @Test
    void a_side_below_zero_is_refused_beside_its_field_and_the_price_goes() {
        LengthField width = find(LengthField.class).withId("width").single();
        width.setValue(Length.mm(-5));
        assertThat(width.isInvalid()).isTrue();
        assertThat(width.getErrorMessage()).contains("above zero");
        width.setValue(Length.mm(300));
        assertThat(width.isInvalid()).isFalse();
    }

    @Test
    void a_promised_day_that_has_passed_is_refused_beside_its_field_and_never_taken() {
        DayField promised = find(DayField.class).withId("promised").single();
        typed(promised, LocalDate.of(2020, 1, 1));
        assertThat(promised.isFit()).isFalse();
        assertThat(promised.isInvalid()).isTrue();
        assertThat(promised.getErrorMessage()).contains("has already passed");
        assertThat(find(ReadyPane.class).single().promised())
                .as("what the page would keep")
                .isEmpty();

        LocalDate ahead = LocalDate.now().plusDays(30);
        typed(promised, ahead);
        assertThat(promised.isInvalid()).isFalse();
        assertThat(find(ReadyPane.class).single().promised()).contains(ahead);
    }

    @Test
    void without_a_laser_the_page_leads_to_where_it_is_entered_and_refuses_in_one_card_however_often_one_presses() {
        awaited(() -> assertThat(find(Anchor.class)
                        .withText("Open Machines and settings")
                        .all())
                .singleElement()
                .satisfies(link -> assertThat(link.getHref()).isEqualTo("machines")));
        for (int pressed = 0; pressed < 3; pressed++) {
            test(find(Button.class).withId("save-quote").single()).click();
        }
        assertThat(find(Notification.class).all()).hasSize(1);
    }

    /** A4 is 210 × 297 mm (ISO 216); 300 × 200 mm with 3 mm of overhang is 306 × 206 mm. */
    @Test
    void a_print_larger_than_every_paper_in_the_house_is_told_before_a_day_is_promised() {
        supplies.keep(new SupplyItem(
                Optional.empty(),
                "Matt sticker paper, A4",
                SupplyKind.STICKER_PAPER,
                UseUnit.SHEET,
                Optional.of(Length.mm(210)),
                Optional.of(Length.mm(297)),
                "pack of 100",
                BigDecimal.valueOf(100),
                new LaserFacts(LaserFacts.Pvc.FREE, LaserFacts.Adhesive.DRY),
                5,
                5,
                true,
                false,
                BigDecimal.ZERO,
                Money.of(BigDecimal.ZERO, workshop.currency())));
        navigate(NewOrderView.class);
        awaited(() -> assertThat(find(PaperNote.class).all())
                .singleElement()
                .satisfies(note ->
                        assertThat(note.getElement().getTextRecursively()).contains("306 × 206 mm", "A4", "Supplies")));
        find(LengthField.class).withId("width").single().setValue(Length.mm(260));
        find(LengthField.class).withId("height").single().setValue(Length.mm(180));
        awaited(() -> assertThat(find(PaperNote.class).all()).isEmpty());
    }

    /** As a browser tells it: a day that a person chose stays, whatever answer comes in beside it. */
    private static void typed(DayField field, LocalDate day) {
        LocalDate before = field.getValue();
        field.setValue(day);
        ComponentUtil.fireEvent(
                field, new AbstractField.ComponentValueChangeEvent<DatePicker, LocalDate>(field, field, before, true));
    }

    private static void awaited(ThrowingRunnable sight) {
        Awaitility.await().pollInSameThread().atMost(Duration.ofMinutes(2)).untilAsserted(sight);
    }
}
