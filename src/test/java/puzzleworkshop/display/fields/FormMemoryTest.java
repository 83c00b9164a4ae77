package puzzleworkshop.display.fields;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.datepicker.DatePicker;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.BigDecimalField;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.UnitSystem;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FormMemoryTest {

    /** A page with one field of each kind, two of them under the same name. */
    private static final class Page extends Div {
        private final TextField name = new TextField("Name");
        private final TextField twin = new TextField("Name");
        private final TextArea note = new TextArea("Note");
        private final LengthField width = new LengthField("Width", UnitSystem.MILLIMETRES);
        private final BigDecimalField discount = new BigDecimalField("Discount");
        private final IntegerField quantity = new IntegerField("How many");
        private final Checkbox tray = new Checkbox("Tray");
        private final DatePicker day = new DatePicker("Wanted by");
        private final Select<Integer> age = new Select<>();
        private final ComboBox<Integer> pieces = new ComboBox<>("Pieces");

        Page() {
            age.setLabel("For");
            age.setItems(3, 6, 99);
            age.setItemLabelGenerator(years -> "from " + years);
            pieces.setItems(48, 96);
            pieces.setValue(48);
            add(new Div(name, twin), note, new Div(new Div(width, discount)), quantity, tray, day, age, pieces);
        }
    }

    @Test
    void every_kind_of_field_comes_back_as_it_was() {
        Page one = new Page();
        one.name.setValue("Ida");
        one.twin.setValue("Lind");
        one.note.setValue("two\nlines");
        one.width.setValue(Length.mm(187.3));
        one.discount.setValue(new BigDecimal("2.50"));
        one.quantity.setValue(7);
        one.tray.setValue(true);
        one.day.setValue(LocalDate.of(2026, 12, 24));
        one.age.setValue(99);
        one.pieces.setValue(300);
        Page other = new Page();
        FormMemory.into(other, FormMemory.of(one));
        assertThat(other.name.getValue()).isEqualTo("Ida");
        assertThat(other.twin.getValue()).isEqualTo("Lind");
        assertThat(other.note.getValue()).isEqualTo("two\nlines");
        assertThat(other.width.getValue().mm()).isEqualTo(187.3);
        assertThat(other.discount.getValue()).isEqualTo("2.50");
        assertThat(other.quantity.getValue()).isEqualTo(7);
        assertThat(other.tray.getValue()).isTrue();
        assertThat(other.day.getValue()).isEqualTo(LocalDate.of(2026, 12, 24));
        assertThat(other.age.getValue()).isEqualTo(99);
        assertThat(other.pieces.getValue())
                .as("a number that is not among those proposed")
                .isEqualTo(300);
    }

    @Test
    void what_cannot_be_put_back_is_left_as_the_page_begins() {
        Page page = new Page();
        page.quantity.setValue(2);
        FormMemory.into(
                page, Map.of("How many", "many", "Wanted by", "soon", "For", "from 12", "Width", "wide", "Gone", "x"));
        assertThat(page.quantity.getValue()).isEqualTo(2);
        assertThat(page.day.getValue()).isNull();
        assertThat(page.age.getValue()).isNull();
        assertThat(page.width.getValue()).isNull();
    }
}
