package puzzleworkshop.machines.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.NumberField;
import puzzleworkshop.display.Formatter;

/** Number fields with a small grey unit and one way to say what is allowed. */
public final class Fields {

    private Fields() {}

    /** Fields in as many columns as there is room for, filling the width. */
    public static FormLayout form(Component... fields) {
        FormLayout form = new FormLayout(fields);
        form.setAutoResponsive(true);
        form.setAutoRows(true);
        form.setExpandColumns(true);
        form.setExpandFields(true);
        return form;
    }

    public static NumberField number(
            Formatter figures, String key, double value, double least, double most, String unit) {
        NumberField field = new NumberField(figures.text(key));
        field.setValue(value);
        field.setMin(least);
        field.setMax(most);
        Span suffix = new Span(unit);
        suffix.addClassName("pw-unit");
        field.setSuffixComponent(suffix);
        return field;
    }

    public static boolean inRange(NumberField field, double least, double most, Formatter figures) {
        Double typed = field.getValue();
        boolean fits = typed != null && typed >= least && typed <= most;
        field.setErrorMessage(figures.text("cutting.form.range", figures.number(least, 2), figures.number(most, 2)));
        field.setInvalid(!fits);
        return fits;
    }
}
