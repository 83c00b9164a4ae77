package puzzleworkshop.cutting.ui.settings;

import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.NumberField;
import java.math.BigDecimal;
import java.util.Optional;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.machines.ui.Fields;
import puzzleworkshop.machines.ui.SpeedField;
import puzzleworkshop.measure.Percent;

/** What is dialled in for a try, with its line energy as one types. */
public class ParameterFields extends Div {

    private final transient Formatter figures;
    private final transient CutSetting setting;
    private final SpeedField speed;
    private final NumberField power;
    private final IntegerField passes;
    private final Checkbox air;
    private final LengthField gap;
    private final Span energy = new Span();

    public ParameterFields(CutSetting setting, CutParameters start, Formatter figures) {
        this.figures = figures;
        this.setting = setting;
        speed = new SpeedField(figures.text("cutting.speed"), figures);
        power = Fields.number(figures, "cutting.power", 100, 0.1, 100, "%");
        passes = new IntegerField(figures.text("cutting.passes"));
        passes.setMin(1);
        passes.setMax(CutParameters.MOST_PASSES);
        passes.setStepButtonsVisible(true);
        air = new Checkbox(figures.text("cutting.air"));
        gap = new LengthField(figures.text("cutting.gap"), figures.units());
        energy.addClassName("pw-number");
        FormLayout form = Fields.form(speed, power, passes, gap, air, energy);
        add(form);
        show(start);
        speed.addValueChangeListener(event -> showEnergy());
        power.addValueChangeListener(event -> showEnergy());
        passes.addValueChangeListener(event -> showEnergy());
    }

    void show(CutParameters parameters) {
        speed.setValue(parameters.speed());
        power.setValue(parameters.power().hundredths().doubleValue());
        passes.setValue(parameters.passes());
        air.setValue(parameters.airAssist());
        gap.setValue(parameters.gap());
        showEnergy();
    }

    /** What is typed, or none with the wrong parts marked. */
    public Optional<CutParameters> read() {
        boolean hasSpeed = speed.getValue() != null;
        speed.setErrorMessage(figures.text("cutting.speed.missing"));
        speed.setInvalid(!hasSpeed);
        boolean hasPower = Fields.inRange(power, 0.1, 100, figures);
        boolean hasPasses =
                passes.getValue() != null && passes.getValue() >= 1 && passes.getValue() <= CutParameters.MOST_PASSES;
        passes.setErrorMessage(figures.text("cutting.job.passes", CutParameters.MOST_PASSES));
        passes.setInvalid(!hasPasses);
        boolean hasGap = gap.getValue() != null && gap.getValue().mm() >= 0;
        gap.setErrorMessage(figures.text("cutting.finding.gap.unreadable"));
        gap.setInvalid(!hasGap);
        if (!(hasSpeed && hasPower && hasPasses && hasGap)) {
            return Optional.empty();
        }
        return Optional.of(new CutParameters(
                speed.getValue(),
                new Percent(BigDecimal.valueOf(power.getValue())),
                passes.getValue(),
                air.getValue(),
                gap.getValue()));
    }

    private void showEnergy() {
        boolean known = speed.getValue() != null
                && power.getValue() != null
                && power.getValue() > 0
                && passes.getValue() != null;
        energy.setText(
                known
                        ? figures.text(
                                "cutting.energy",
                                setting.machine().beam().powerWatts()
                                        * power.getValue()
                                        / 100
                                        * passes.getValue()
                                        / speed.getValue().mmPerSecond())
                        : "");
    }
}
