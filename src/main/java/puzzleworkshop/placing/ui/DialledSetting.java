package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.Text;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.machines.Machine;

/** A setting large beside its file, in the unit that the machine's own program asks for: a factor of 60 is the classic mistake. */
@StyleSheet("context://cutting.css")
class DialledSetting extends Div {

    private final transient Formatter figures;

    DialledSetting(Machine machine, CutParameters set, Formatter figures) {
        this.figures = figures;
        addClassName("cutting-dialled");
        add(
                figure(
                        "placing.set.speed",
                        figures.number(machine.control().feed().of(set.speed()), 1),
                        machine.control().feed().words()),
                figure("placing.set.power", figures.percent(set.power()), scale(machine, set)),
                figure("placing.set.passes", Integer.toString(set.passes()), ""),
                figure(
                        "placing.set.air",
                        figures.text(set.airAssist() ? "placing.set.air.on" : "placing.set.air.off"),
                        ""));
    }

    private static String scale(Machine machine, CutParameters set) {
        return machine.control().takesGcode()
                ? "S" + machine.control().words().power(set.power().asDouble())
                : "";
    }

    private Div figure(String key, String value, String unit) {
        Span name = new Span(figures.text(key));
        name.addClassName("pw-small");
        Span large = new Span(value);
        large.addClassName("cutting-dialled-value");
        Span small = new Span(unit);
        small.addClassName("pw-soft");
        return new Div(name, new Div(large, new Text(" "), small));
    }
}
