package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.NumberField;
import puzzleworkshop.bench.BlankScale;
import puzzleworkshop.bench.BlankScale.Reading;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.orders.Order;

/** Before the cut: the blank on the scale, so that a missing piece is seen by weight afterwards. */
class WeighBlank extends Div {

    WeighBlank(Order order, BlankScale scale, Formatter figures, String who, Runnable again) {
        addClassName("pw-stack");
        Reading last = scale.lastFor(order.id()).orElse(null);
        NumberField grams = new NumberField(figures.text("bench.count.weigh.grams"));
        NumberField step = new NumberField(figures.text("bench.count.weigh.step"));
        grams.setMin(0);
        step.setMin(0.01);
        step.setValue(last != null ? last.stepGrams() : scale.usualStep().orElse(1.0));
        if (last != null) {
            grams.setValue(last.grams());
        }
        SmallText why = new SmallText(figures.text("bench.count.weigh.why"));
        Button note = new Button(figures.text("bench.count.weigh.note"));
        note.addClickListener(event -> {
            boolean typed = grams.getValue() != null && step.getValue() != null;
            grams.setInvalid(grams.getValue() == null);
            if (typed) {
                Feedback.unlessRefused(figures, "bench.count.weigh.noted", () -> {
                    scale.weighed(order.id(), new Reading(grams.getValue(), step.getValue()), who);
                    again.run();
                });
            }
        });
        Div fields = new Div(grams, step, note);
        fields.addClassName("pattern-choices");
        add(why, fields);
    }
}
