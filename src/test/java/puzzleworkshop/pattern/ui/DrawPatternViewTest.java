package puzzleworkshop.pattern.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextField;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.machines.Beam;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@Transactional
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class DrawPatternViewTest extends SpringBrowserlessTest {

    private static final String OVAL_IS_CUT =
            "No picture yet: the oval itself is cut. As soon as New order has a picture, lines follow its own edge.";

    @Autowired
    SketchDesk desk;

    @Autowired
    Machines machines;

    @Autowired
    Workshop workshop;

    @Test
    void what_was_typed_on_one_way_to_cut_is_there_again_after_another_was_looked_at() {
        navigate("draw-pattern/name", DrawPatternView.class);
        name().setValue("ANNA");
        pieces().setValue(120);
        navigate("draw-pattern/children", DrawPatternView.class);
        assertThat(pieces().getValue()).isEqualTo(8);
        pieces().setValue(12);
        navigate("draw-pattern/name", DrawPatternView.class);
        assertThat(name().getValue()).isEqualTo("ANNA");
        assertThat(pieces().getValue()).isEqualTo(120);
        assertThat(age().getValue()).isEqualTo(puzzleworkshop.pattern.IntendedAge.FROM_6);
        navigate("draw-pattern/children", DrawPatternView.class);
        assertThat(pieces().getValue()).isEqualTo(12);
    }

    @Test
    void styles_can_be_compared_only_once_a_pattern_is_drawn() {
        navigate("draw-pattern", DrawPatternView.class);
        assertThat(find(Button.class).withId("compare-styles").single().isEnabled())
                .isFalse();
    }

    @Test
    void a_sketch_is_drawn_for_the_cut_of_the_machine_that_would_cut_it() {
        assertThat(desk.kerf()).isEmpty();
        Machine usual = Machine.usual("Laser", workshop.currency());
        machines.save(new Machine(
                0,
                "Wide",
                usual.bed(),
                new Beam(20, 450, Length.mm(3), Length.mm(0.3)),
                usual.motion(),
                usual.bowLimit(),
                usual.setUp(),
                usual.passPause(),
                usual.costs(),
                true,
                false));
        assertThat(desk.kerf()).contains(Length.mm(0.3));
    }

    @Test
    @SuppressWarnings("unchecked")
    void without_a_picture_it_is_said_that_the_marked_oval_itself_is_cut() {
        navigate("draw-pattern/faces", DrawPatternView.class);
        test(find(Button.class).withText("Mark a place").single()).click();
        assertThat(find(SmallText.class).withText(OVAL_IS_CUT).all()).isEmpty();
        Select<Object> lines =
                (Select<Object>) find(Select.class).withLabel("Lines there").single();
        lines.setValue(lines.getListDataView().getItem(1));
        assertThat(find(SmallText.class).withText(OVAL_IS_CUT).all()).hasSize(1);
        lines.setValue(lines.getListDataView().getItem(0));
        assertThat(find(SmallText.class).withText(OVAL_IS_CUT).all()).isEmpty();
    }

    private TextField name() {
        return find(TextField.class).withLabel("Name").single();
    }

    private IntegerField pieces() {
        return find(IntegerField.class).withLabel("Pieces, about").single();
    }

    private Select<?> age() {
        return find(Select.class).withLabel("Made for").single();
    }
}
