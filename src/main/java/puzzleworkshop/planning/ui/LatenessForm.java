package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.NumberField;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.planning.LatenessWeights;
import puzzleworkshop.planning.schedule.LatenessCost;

/** What the week's sequence counts a late order with, and an example of what that means. */
class LatenessForm extends Div {

    private final NumberField atAll = number("planning.lateness.at-all");
    private final NumberField perDay = number("planning.lateness.per-day");
    private final NumberField growth = number("planning.lateness.growth");
    private final NumberField started = number("planning.lateness.started");
    private final NumberField paid = number("planning.lateness.paid");
    private final Paragraph example = new Paragraph();

    LatenessForm(LatenessWeights weights, Formatter figures) {
        addClassName("pw-section");
        example.addClassName("pw-small");
        show(weights.cost(), figures);
        Button save = new Button(
                getTranslation("workshop.save"),
                e -> Feedback.unlessRefused(figures, "workshop.saved", () -> {
                    LatenessCost cost = read();
                    weights.save(cost);
                    show(cost, figures);
                }));
        Div row = new Div(atAll, perDay, growth, started, paid, save);
        row.addClassName("pw-row");
        add(
                new H2(getTranslation("planning.lateness")),
                new Paragraph(getTranslation("planning.lateness.lead")),
                row,
                example);
    }

    private NumberField number(String key) {
        NumberField field = new NumberField(getTranslation(key));
        field.setStep(0.5);
        return field;
    }

    private void show(LatenessCost cost, Formatter figures) {
        atAll.setValue(cost.atAll());
        perDay.setValue(cost.perDay());
        growth.setValue(cost.growth());
        started.setValue(cost.started());
        paid.setValue(cost.paid());
        example.setText(figures.text(
                "planning.lateness.example", cost.of(1), cost.of(3), cost.of(10), cost.of(10) / cost.of(1)));
    }

    private LatenessCost read() {
        try {
            return new LatenessCost(
                    atAll.getValue(), perDay.getValue(), growth.getValue(), started.getValue(), paid.getValue());
        } catch (IllegalArgumentException | NullPointerException outOfRange) {
            throw new Refused("planning.lateness.range");
        }
    }
}
