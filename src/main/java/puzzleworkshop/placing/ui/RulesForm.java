package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.NumberField;
import java.math.BigDecimal;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.placing.PlacingRules;
import puzzleworkshop.placing.Positions;

/** How exactly marks are read, and whether a stretched print is followed; the owner's to change. */
class RulesForm extends Div {

    private final transient Positions positions;
    private final transient Formatter figures;
    private final LengthField reading;
    private final LengthField repeatability;
    private final Checkbox follow;
    private final NumberField most;

    RulesForm(Positions positions, boolean owner, Formatter figures) {
        this.positions = positions;
        this.figures = figures;
        addClassName("pw-section");
        PlacingRules now = positions.rules();
        reading = field("reading", now.reading());
        repeatability = field("repeatability", now.repeatability());
        follow = new Checkbox(figures.text("placing.rules.follow"), now.follow());
        most = new NumberField(figures.text("placing.rules.most"));
        most.setValue(now.followMost().hundredths().doubleValue());
        most.setMin(0);
        most.setMax(PlacingRules.MOST_STRETCH_PERCENT);
        most.setStep(0.1);
        Div fields = new Div(reading, repeatability, follow, most);
        fields.addClassNames("pw-form", "placing-rules");
        Paragraph lead = new Paragraph(figures.text("placing.rules.lead"));
        lead.addClassName("pw-soft");
        add(new H2(figures.text("placing.rules")), lead, fields);
        if (owner) {
            Button save = new Button(figures.text("placing.rules.keep"), event -> keep());
            save.addThemeVariants(ButtonVariant.PRIMARY);
            add(save);
        } else {
            reading.setReadOnly(true);
            repeatability.setReadOnly(true);
            follow.setReadOnly(true);
            most.setReadOnly(true);
        }
    }

    private LengthField field(String key, Length value) {
        LengthField field = new LengthField(figures.text("placing.rules." + key), figures.units());
        field.setValue(value);
        return field;
    }

    private void keep() {
        boolean share =
                most.getValue() != null && most.getValue() >= 0 && most.getValue() <= PlacingRules.MOST_STRETCH_PERCENT;
        most.setInvalid(!share);
        most.setErrorMessage(figures.text("placing.rules.most.range", PlacingRules.MOST_STRETCH_PERCENT));
        if (inRange(reading, 0.01) & inRange(repeatability, 0) & share) {
            PlacingRules typed = new PlacingRules(
                    reading.getValue(),
                    repeatability.getValue(),
                    follow.getValue(),
                    new Percent(BigDecimal.valueOf(most.getValue())));
            Feedback.unlessRefused(figures, "placing.rules.kept", () -> positions.keep(typed));
        }
    }

    private boolean inRange(LengthField field, double least) {
        Length typed = field.getValue();
        boolean fits = typed != null && typed.mm() >= least && typed.mm() <= 3;
        field.setErrorMessage(figures.text("placing.rules.range", Length.mm(least), Length.mm(3)));
        field.setInvalid(!fits);
        return fits;
    }
}
