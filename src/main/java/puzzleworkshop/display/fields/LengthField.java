package puzzleworkshop.display.fields;

import com.vaadin.flow.component.customfield.CustomField;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.Locale;
import puzzleworkshop.display.Svg;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.UnitSystem;

/**
 * A field for a length in the house's units. What cannot be read as a number stays in the field, marked; the value is
 * then null. A comma counts as a point. A value that nobody touches is not changed by being shown in a few digits.
 */
public class LengthField extends CustomField<Length> {

    private final TextField text = new TextField();
    private final UnitSystem units;

    /** What was set, exactly, and the rounded text that stands for it: as long as nobody types, it stays what it was. */
    private transient Length set;

    private String shown = "";

    public LengthField(String label, UnitSystem units) {
        this.units = units;
        setLabel(label);
        Span unit = new Span(units.symbol());
        unit.addClassName("pw-unit");
        text.setSuffixComponent(unit);
        text.setValueChangeMode(ValueChangeMode.LAZY);
        text.setValueChangeTimeout(350);
        text.setWidthFull();
        text.setAriaLabel(label);
        InputModes.numbers(text, true);
        text.addValueChangeListener(event -> updateValue());
        // A refusal speaks of what stood there when it was said; whoever judges while one types says it again.
        addValueChangeListener(event -> setInvalid(event.getValue() == null && isInvalid()));
        add(text);
    }

    @Override
    protected Length generateModelValue() {
        return set != null && text.getValue().equals(shown) ? set : read(text.getValue(), units);
    }

    @Override
    protected void setPresentationValue(Length length) {
        set = length;
        shown = length == null ? "" : shown(length);
        text.setValue(shown);
    }

    @Override
    public void setInvalid(boolean invalid) {
        super.setInvalid(invalid);
        text.setInvalid(invalid);
    }

    /** What was typed, readable or not. */
    public String typed() {
        return text.getValue();
    }

    private String shown(Length length) {
        return Svg.n(Math.round(units.valueOf(length) * 1000) / 1000.0);
    }

    static Length read(String typed, UnitSystem units) {
        String plain = typed.strip().replace(',', '.').toLowerCase(Locale.ROOT);
        UnitSystem asTyped = units;
        for (UnitSystem unit : UnitSystem.values()) {
            if (plain.endsWith(unit.symbol())) {
                asTyped = unit;
                plain = plain.substring(0, plain.length() - unit.symbol().length())
                        .strip();
            }
        }
        try {
            double value = Double.parseDouble(plain);
            return Double.isFinite(value) ? asTyped.length(value) : null;
        } catch (NumberFormatException notANumber) {
            return null;
        }
    }
}
