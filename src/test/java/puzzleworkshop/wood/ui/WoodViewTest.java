package puzzleworkshop.wood.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.NumberField;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.wood.WoodAdvice;
import puzzleworkshop.wood.asked.AskedFor;
import puzzleworkshop.wood.asked.AskedSize;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class WoodViewTest extends SpringBrowserlessTest {

    @Autowired
    AskedFor asked;

    @Autowired
    WoodAdvice advice;

    @Autowired
    DataSource database;

    @BeforeEach
    void an_empty_workshop() {
        CleanDatabase.now(database);
    }

    @Test
    void the_page_shows_its_parts_and_keeps_the_owners_rules() {
        navigate(WoodView.class);
        assertThat(find(H2.class).all())
                .extracting(H2::getText)
                .contains("Month by month", "Boards to order", "Room in the rack", "Rules");
        IntegerField room = find(IntegerField.class).all().getFirst();
        test(room).setValue(33);
        press("Save rules");
        assertThat(advice.rules().mostPieces()).isEqualTo(33);
    }

    @Test
    void the_owner_corrects_what_we_are_asked_for() {
        navigate(AskedForView.class);
        AskedSize first = asked.sizes().getFirst();
        assertThat(find(Span.class).all()).anyMatch(span -> span.getText().startsWith("about"));
        NumberField own = find(NumberField.class).all().getFirst();
        test(own).setValue(7.5);
        press("Save");
        assertThat(asked.sizes().getFirst().size()).isEqualTo(first.size());
        assertThat(asked.sizes().getFirst().perWeek()).isEqualTo(7.5);
    }

    @Test
    void what_cannot_be_read_is_refused_and_takes_back_nothing() {
        asked.correct(asked.sizes().getFirst().size(), 7.5, "Robin");
        navigate(AskedForView.class);
        NumberField own = find(NumberField.class).all().getFirst();
        own.setInvalid(true);
        own.setValue(null);
        own.setInvalid(true);
        press("Save");
        assertThat(asked.sizes().getFirst().corrected()).hasValue(7.5);
    }

    @Test
    void saving_one_size_leaves_what_was_typed_at_another_and_a_new_size_gets_a_row() {
        navigate(AskedForView.class);
        List<NumberField> own = find(NumberField.class).all();
        test(own.get(1)).setValue(3.25);
        test(own.getFirst()).setValue(7.5);
        press("Save");
        assertThat(find(NumberField.class).all())
                .anyMatch(field -> Double.valueOf(3.25).equals(field.getValue()));
        List<LengthField> sides = find(LengthField.class).all();
        sides.getFirst().setValue(Length.mm(355));
        sides.getLast().setValue(Length.mm(255));
        test(find(NumberField.class).all().getLast()).setValue(2.0);
        press("Add");
        assertThat(asked.sizes()).anySatisfy(size -> {
            assertThat(size.size()).isEqualTo(Size.mm(355, 255));
            assertThat(size.perWeek()).isEqualTo(2);
        });
        assertThat(find(Span.class).all()).anyMatch(span -> span.getText().contains("355"));
    }

    private void press(String words) {
        test(find(Button.class).all().stream()
                        .filter(button -> words.equals(button.getText()))
                        .findFirst()
                        .orElseThrow())
                .click();
    }
}
