package puzzleworkshop.machines.ui;

import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.NumberField;
import java.math.BigDecimal;
import java.util.List;
import java.util.function.Function;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.machines.BeamWords;
import puzzleworkshop.machines.BedCorner;
import puzzleworkshop.machines.FeedUnit;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.machines.MachineControl;
import puzzleworkshop.measure.Percent;

/** How a machine counts, and how it is spoken to; what only matters to G-code is shown when it takes that. */
class ControlFields extends Div {

    private static final int MOST_POWER = 100_000;
    private static final String FOLLOWING = "following";
    private static final String CONSTANT = "constant";

    private final transient Formatter figures;
    private final Select<BedCorner> origin;
    private final Select<Boolean> x;
    private final Select<Boolean> y;
    private final Select<MachineAxes.Unit> unit;
    private final Select<FeedUnit> feed;
    private final NumberField frame;
    private final Checkbox gcode;
    private final Checkbox dynamic;
    private final IntegerField full;
    private final Select<String> air;
    private final Select<Boolean> dwell;

    /** @param owner who alone sets the power at which a frame is traced */
    ControlFields(MachineControl now, Formatter figures, boolean owner) {
        this.figures = figures;
        addClassName("cutting-form-part");
        MachineAxes axes = now.axes();
        origin = select(
                "origin",
                List.of(BedCorner.values()),
                axes.origin(),
                corner -> figures.text("cutting.control.origin." + corner));
        x = select(
                "x",
                List.of(true, false),
                axes.xToRight(),
                right -> figures.text(right ? "cutting.control.x.right" : "cutting.control.x.left"));
        y = select(
                "y",
                List.of(true, false),
                axes.yToBack(),
                back -> figures.text(back ? "cutting.control.y.back" : "cutting.control.y.front"));
        unit = select(
                "unit",
                List.of(MachineAxes.Unit.values()),
                axes.unit(),
                of -> figures.text("cutting.control.unit." + of));
        feed = select("feed", List.of(FeedUnit.values()), now.feed(), FeedUnit::words);
        frame = Fields.number(
                figures,
                "cutting.control.frame",
                now.framePower().hundredths().doubleValue(),
                0,
                MachineControl.MOST_FRAME_PERCENT,
                "%");
        frame.setHelperText(figures.text("cutting.control.frame.help"));
        frame.setReadOnly(!owner);
        gcode = new Checkbox(figures.text("cutting.control.gcode"), now.takesGcode());
        dynamic = new Checkbox(
                figures.text("cutting.control.dynamic"), now.words().dynamic());
        full = new IntegerField(figures.text("cutting.control.full"));
        full.setMin(1);
        full.setMax(MOST_POWER);
        full.setValue(now.words().fullPower());
        air = select(
                "air",
                List.of("", "M7", "M8"),
                now.words().airOn(),
                word -> word.isEmpty() ? figures.text("cutting.control.air.none") : word);
        dwell = select(
                "dwell",
                List.of(true, false),
                now.words().secondsInDwell(),
                seconds ->
                        figures.text(seconds ? "cutting.control.dwell.seconds" : "cutting.control.dwell.milliseconds"));
        Select<String> preset = select(
                "preset", List.of(FOLLOWING, CONSTANT), null, of -> figures.text("cutting.control.preset." + of));
        preset.addValueChangeListener(event -> {
            if (event.getValue() != null) {
                show(FOLLOWING.equals(event.getValue()) ? BeamWords.FOLLOWING_SPEED : BeamWords.CONSTANT);
            }
        });
        FormLayout words = Fields.form(preset, full, air, dwell, dynamic);
        words.setVisible(now.takesGcode());
        gcode.addValueChangeListener(event -> words.setVisible(event.getValue()));
        SmallText help = new SmallText(figures.text("cutting.control.help"));
        add(help, Fields.form(origin, x, y, unit, feed, frame), gcode, words);
    }

    boolean valid() {
        boolean power = full.getValue() != null && full.getValue() >= 1 && full.getValue() <= MOST_POWER;
        full.setErrorMessage(figures.text("cutting.form.range", "1", Integer.toString(MOST_POWER)));
        full.setInvalid(!power);
        return Fields.inRange(frame, 0, MachineControl.MOST_FRAME_PERCENT, figures) & power;
    }

    MachineControl read() {
        return new MachineControl(
                new MachineAxes(origin.getValue(), x.getValue(), y.getValue(), unit.getValue()),
                feed.getValue(),
                gcode.getValue(),
                new BeamWords(dynamic.getValue(), full.getValue(), air.getValue(), dwell.getValue()),
                new Percent(BigDecimal.valueOf(frame.getValue())));
    }

    private void show(BeamWords words) {
        dynamic.setValue(words.dynamic());
        full.setValue(words.fullPower());
        air.setValue(words.airOn());
        dwell.setValue(words.secondsInDwell());
    }

    private <T> Select<T> select(String key, List<T> choices, T value, Function<T, String> words) {
        Select<T> select = new Select<>();
        select.setLabel(figures.text("cutting.control." + key));
        select.setItems(choices);
        select.setItemLabelGenerator(words::apply);
        select.setValue(value);
        return select;
    }
}
