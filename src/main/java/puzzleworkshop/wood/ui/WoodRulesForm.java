package puzzleworkshop.wood.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.textfield.IntegerField;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.wood.WoodAdvice;
import puzzleworkshop.wood.WoodRules;

/** Room in the rack, weeks looked ahead, weeks until boards come, risk allowed. */
class WoodRulesForm extends Div {

    WoodRulesForm(WoodAdvice advice, Formatter figures, Runnable saved) {
        addClassName("pw-section");
        WoodRules rules = advice.rules();
        IntegerField room = field("wood.rules.field.room", rules.mostPieces());
        IntegerField ahead = field("wood.rules.field.ahead", rules.weeksAhead());
        IntegerField delivery = field("wood.rules.field.delivery", rules.deliveryWeeks());
        IntegerField service = field("wood.rules.field.service", (int) Math.round(rules.servicePercent()));
        Button save = new Button(getTranslation("wood.rules.save"), event -> {
            boolean done = Feedback.unlessRefused(
                    figures,
                    "wood.rules.saved",
                    () -> advice.save(new WoodRules(
                            given(room, "wood.rules.room"),
                            given(ahead, "wood.rules.weeks"),
                            given(delivery, "wood.rules.weeks"),
                            given(service, "wood.rules.service"))));
            if (done) {
                saved.run();
            }
        });
        Div fields = new Div(room, ahead, delivery, service, save);
        fields.addClassName("wood-fields");
        add(new H2(getTranslation("wood.rules")), fields);
    }

    private static int given(IntegerField field, String refusal) {
        if (field.isInvalid() || field.getValue() == null) {
            throw new Refused(refusal);
        }
        return field.getValue();
    }

    private IntegerField field(String key, int value) {
        IntegerField field = new IntegerField(getTranslation(key));
        field.setValue(value);
        return field;
    }
}
