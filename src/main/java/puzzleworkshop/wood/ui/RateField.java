package puzzleworkshop.wood.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.component.textfield.TextFieldVariant;
import java.util.OptionalDouble;
import java.util.function.DoubleConsumer;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;

/** How many blanks a week the owner expects; empty: what was learned counts. What cannot be read is refused, not taken as empty. */
class RateField extends Div {

    /** @param saved after the word was kept or taken back */
    RateField(
            Formatter figures,
            String of,
            OptionalDouble corrected,
            DoubleConsumer correct,
            Runnable uncorrect,
            Runnable saved) {
        NumberField own = new NumberField(getTranslation("wood.asked.own"));
        own.addThemeVariants(TextFieldVariant.LUMO_SMALL);
        corrected.ifPresent(own::setValue);
        own.setClearButtonVisible(true);
        Button save = new Button(getTranslation("wood.asked.save"), event -> {
            boolean done = Feedback.unlessRefused(figures, "wood.asked.saved", () -> {
                if (own.isInvalid()) {
                    throw new Refused("wood.asked.rate");
                }
                if (own.getValue() == null) {
                    uncorrect.run();
                } else {
                    correct.accept(own.getValue());
                }
            });
            if (done) {
                saved.run();
            }
        });
        save.setAriaLabel(figures.text("wood.asked.save.of", of));
        save.addThemeVariants(ButtonVariant.SMALL);
        add(own, save);
        addClassName("wood-correction");
    }
}
