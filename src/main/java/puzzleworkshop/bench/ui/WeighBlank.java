package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.NumberField;
import java.util.Optional;
import puzzleworkshop.bench.BlankScale;
import puzzleworkshop.bench.BlankScale.Reading;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.SafeQuestion;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Order;

/** Before the cut: the blank on the scale, so that a missing piece is seen by weight afterwards. */
@StyleSheet("context://pattern.css")
class WeighBlank extends Div {

    WeighBlank(Order order, BlankScale scale, Formatter figures, String who, Runnable again) {
        addClassName("pw-stack");
        Optional<Size> blank = scale.blankOf(order);
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
            if (!typed) {
                return;
            }
            Reading reading = new Reading(grams.getValue(), step.getValue(), blank);
            Runnable keep = () -> Feedback.unlessRefused(figures, "bench.count.weigh.noted", () -> {
                scale.weighed(order.id(), reading, who);
                again.run();
            });
            reading.unlikelyDensity(order.board().thickness())
                    .ifPresentOrElse(density -> ask(density, blank.orElseThrow(), figures, keep), keep);
        });
        Div fields = new Div(grams, step, note);
        fields.addClassName("pattern-choices");
        add(why, fields);
    }

    private static void ask(double density, Size blank, Formatter figures, Runnable keep) {
        SafeQuestion question = new SafeQuestion(
                figures.text("bench.count.weigh.unlikely"),
                figures.text("bench.count.weigh.again"),
                figures.text("bench.count.weigh.sure"));
        question.setText(figures.text("bench.count.weigh.density", blank, figures.number(density, 0)));
        question.addConfirmListener(event -> keep.run());
        question.open();
    }
}
