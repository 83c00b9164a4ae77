package puzzleworkshop.machines.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.component.textfield.TextField;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.machines.Beam;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.machines.Motion;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;

/** Everything about one machine, new or known; what its hour is made of is shown to an owner only. */
public class MachineForm extends Dialog {

    private final transient Machine before;
    private final transient Machines machines;
    private final transient Formatter figures;
    private final transient Consumer<Machine> saved;
    private final List<BooleanSupplier> checks = new ArrayList<>();
    private final TextField name;
    private final LengthField bedWidth;
    private final LengthField bedHeight;
    private final NumberField power;
    private final NumberField wavelength;
    private final LengthField gap;
    private final LengthField kerf;
    private final LengthField bow;
    private final SpeedField travel;
    private final SpeedField cut;
    private final NumberField acceleration;
    private final LengthField corner;
    private final NumberField setUp;
    private final NumberField pause;
    private final CostFields costs;
    private final ControlFields control;

    public MachineForm(Machine machine, Machines machines, Formatter figures, boolean owner, Consumer<Machine> saved) {
        super(figures.text(machine.id() == 0 ? "cutting.machine.new" : "cutting.machine.edit"));
        this.before = machine;
        this.machines = machines;
        this.figures = figures;
        this.saved = saved;
        addClassName("cutting-machine-form");
        setWidth("46rem");

        name = new TextField(figures.text("cutting.machine.name"));
        name.setValue(machine.name());
        name.setMaxLength(80);
        checks.add(() -> verdict(name, !name.getValue().isBlank(), "cutting.machine.name.missing"));
        bedWidth = length("bed.width", machine.bed().width(), 10, 5000);
        bedHeight = length("bed.height", machine.bed().height(), 10, 5000);
        power = number("power", machine.beam().powerWatts(), 0.1, 10_000, "W");
        wavelength = number("wavelength", machine.beam().wavelengthNm(), 180, 20_000, "nm");
        gap = length("lens.gap", machine.beam().lensGap(), 0, 200);
        kerf = length("kerf", machine.beam().kerf(), 0, 5);
        bow = length("bow", machine.bowLimit(), 0, 20);
        travel = speed("travel", machine.motion().maxTravel());
        cut = speed("cut", machine.motion().maxCut());
        acceleration = number("acceleration", machine.motion().acceleration(), 1, 100_000, "mm/s²");
        corner = length("corner", machine.motion().cornerDeviation(), 0, 1);
        corner.setHelperText(figures.text("cutting.machine.corner.help"));
        setUp = number("set.up", machine.setUp().value(), 0, 240, "min");
        pause = number("pause", machine.passPause().toSeconds(), 0, 3600, "s");
        control = new ControlFields(machine.control(), figures, owner);
        checks.add(control::valid);
        costs = new CostFields(machine.costs(), figures);

        add(part("cutting.machine.part.bed", name, bedWidth, bedHeight));
        add(part("cutting.machine.part.beam", power, wavelength, gap, kerf, bow));
        add(part("cutting.machine.part.motion", travel, cut, acceleration, corner, setUp, pause));
        add(new H3(figures.text("cutting.machine.part.control")), control);
        if (owner) {
            checks.add(costs::valid);
            add(new H3(figures.text("cutting.machine.part.costs")), costs);
        }
        SmallText caution = new SmallText(figures.text("cutting.machine.caution"));
        add(caution);
        Button save = new Button(figures.text("cutting.machine.save"), event -> save());
        save.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(figures.text("cutting.cancel"), event -> close()), save);
    }

    private void save() {
        boolean complete = true;
        for (BooleanSupplier check : checks) {
            complete &= check.getAsBoolean();
        }
        if (!complete) {
            Feedback.tell(figures.text("cutting.form.incomplete"), true);
            return;
        }
        Machine typed = new Machine(
                before.id(),
                name.getValue(),
                new Size(bedWidth.getValue(), bedHeight.getValue()),
                new Beam(power.getValue(), (int) Math.round(wavelength.getValue()), gap.getValue(), kerf.getValue()),
                new Motion(travel.getValue(), cut.getValue(), acceleration.getValue(), corner.getValue()),
                bow.getValue(),
                Minutes.of(setUp.getValue()),
                Minutes.ofSeconds(pause.getValue()),
                costs.read(),
                control.read(),
                before.standard(),
                before.retired());
        Feedback.unlessRefused(figures, "cutting.saved", () -> {
            Machine written = machines.save(typed);
            close();
            saved.accept(written);
        });
    }

    private Div part(String key, Component... fields) {
        FormLayout form = Fields.form(fields);
        Div part = new Div(new H3(figures.text(key)), form);
        part.addClassName("cutting-form-part");
        return part;
    }

    private LengthField length(String key, Length value, double least, double most) {
        LengthField field = new LengthField(figures.text("cutting.machine." + key), figures.units());
        field.setValue(value);
        checks.add(() -> {
            Length typed = field.getValue();
            boolean fits = typed != null && typed.mm() >= least && typed.mm() <= most;
            field.setErrorMessage(figures.text("cutting.form.range", Length.mm(least), Length.mm(most)));
            field.setInvalid(!fits);
            return fits;
        });
        return field;
    }

    private NumberField number(String key, double value, double least, double most, String unit) {
        NumberField field = Fields.number(figures, "cutting.machine." + key, value, least, most, unit);
        checks.add(() -> Fields.inRange(field, least, most, figures));
        return field;
    }

    private SpeedField speed(String key, Speed value) {
        SpeedField field = new SpeedField(figures.text("cutting.machine.speed." + key), figures);
        field.setValue(value);
        checks.add(() -> {
            boolean fits = field.getValue() != null;
            field.setErrorMessage(figures.text("cutting.speed.missing"));
            field.setInvalid(!fits);
            return fits;
        });
        return field;
    }

    private boolean verdict(TextField field, boolean fits, String key) {
        field.setErrorMessage(figures.text(key));
        field.setInvalid(!fits);
        return fits;
    }
}
