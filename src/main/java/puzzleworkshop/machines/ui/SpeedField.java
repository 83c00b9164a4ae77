package puzzleworkshop.machines.ui;

import com.vaadin.flow.component.customfield.CustomField;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.data.value.ValueChangeMode;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Speed;

/** A speed typed in mm/min and shown in mm/s below: a factor of 60 is the classic mistake. */
public class SpeedField extends CustomField<Speed> {

    private final NumberField field = new NumberField();
    private final transient Formatter figures;

    /** What was set, exactly, and the rounded figure that stands for it until somebody types another. */
    private transient Speed set;

    private Double shown;

    public SpeedField(String label, Formatter figures) {
        this.figures = figures;
        setLabel(label);
        field.setAriaLabel(label);
        field.setMin(0.01);
        field.setWidthFull();
        field.setValueChangeMode(ValueChangeMode.EAGER);
        Span unit = new Span("mm/min");
        unit.addClassName("pw-unit");
        field.setSuffixComponent(unit);
        field.addValueChangeListener(event -> {
            updateValue();
            showOther();
        });
        add(field);
    }

    @Override
    protected Speed generateModelValue() {
        Double typed = field.getValue();
        if (set != null && typed != null && typed.equals(shown)) {
            return set;
        }
        return typed == null || typed <= 0 ? null : Speed.mmPerMinute(typed);
    }

    @Override
    protected void setPresentationValue(Speed speed) {
        set = speed;
        shown = speed == null ? null : (Double) (Math.round(speed.toMmPerMinute() * 10) / 10.0);
        field.setValue(shown);
        showOther();
    }

    private void showOther() {
        Speed speed = generateModelValue();
        field.setHelperText(
                speed == null ? "" : figures.text("cutting.speed.other", figures.number(speed.mmPerSecond(), 2)));
    }
}
