package puzzleworkshop.sheets.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.ScreenTest;

/** What a board costs is never nothing because it could not be read, and is not carried from one board to the next. */
@DatabaseTest
@Transactional
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class CostFieldsTest extends ScreenTest {

    private static final String COST = "Carries in cost (€)";
    private static final String PRICE = "Price (€)";

    @Autowired
    SheetRack rack;

    @Autowired
    RackSettings settings;

    @Test
    void what_one_sheet_carries_in_cost_is_not_taken_for_the_next() {
        navigate(EnterSheetView.class);
        take("3.20");
        assertThat(number(COST).getValue()).isNull();
        take(null);
        assertThat(rack.list(RackFilter.inRack(), 0, 10))
                .extracting(sheet -> sheet.cost().rounded())
                .containsExactlyInAnyOrder(Money.of("3.20", "EUR"), Money.of("0.00", "EUR"));
    }

    @Test
    void a_cost_that_cannot_be_read_takes_no_sheet_in() {
        navigate(EnterSheetView.class);
        typeUnreadable(number(COST), "3,2O");
        take(null);
        assertThat(rack.count(RackFilter.inRack())).isZero();
        assertThat(number(COST).isInvalid()).isTrue();
    }

    @Test
    void a_board_is_not_offered_at_a_price_that_cannot_be_read_or_is_missing() {
        navigate(RackRulesView.class);
        find(TextField.class).all().stream()
                .filter(field -> "Name".equals(field.getLabel()))
                .findFirst()
                .orElseThrow()
                .setValue("Ply 600 × 400");
        lengths("Width", 600);
        lengths("Height", 400);
        press("Add the board");
        typeUnreadable(number(PRICE), "l2");
        press("Add the board");
        assertThat(settings.offers()).isEmpty();
        assertThat(number(PRICE).isInvalid()).isTrue();
        number(PRICE).setValue(new BigDecimal("12"));
        press("Add the board");
        assertThat(settings.offers())
                .singleElement()
                .satisfies(offer -> assertThat(offer.price().rounded()).isEqualTo(Money.of("12.00", "EUR")));
    }

    private void take(String cost) {
        if (cost != null) {
            number(COST).setValue(new BigDecimal(cost));
        }
        find(LengthField.class).all().get(0).setValue(Length.mm(310));
        find(LengthField.class).all().get(1).setValue(Length.mm(220));
        press("Take it in");
    }

    private void lengths(String label, double millimetres) {
        find(LengthField.class).all().stream()
                .filter(field -> label.equals(field.getLabel()))
                .findFirst()
                .orElseThrow()
                .setValue(Length.mm(millimetres));
    }

    private void press(String words) {
        test(find(Button.class).withText(words).single()).click();
    }
}
