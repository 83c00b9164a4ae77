package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.machines.Machine;

/** A setting large beside its file, in the unit that the machine's own program asks for: a factor of 60 is the classic mistake. */
@StyleSheet("context://cutting.css")
class DialledSetting extends Still {

    DialledSetting(Machine machine, CutParameters set, Formatter figures) {
        super(Markup.div(
                "cutting-dialled",
                figure(
                        figures.text("placing.set.speed"),
                        figures.number(machine.control().feed().of(set.speed()), 1),
                        machine.control().feed().words()),
                figure(figures.text("placing.set.power"), figures.percent(set.power()), scale(machine, set)),
                figure(figures.text("placing.set.passes"), Integer.toString(set.passes()), ""),
                figure(
                        figures.text("placing.set.air"),
                        figures.text(set.airAssist() ? "placing.set.air.on" : "placing.set.air.off"),
                        "")));
    }

    private static String scale(Machine machine, CutParameters set) {
        return machine.control().takesGcode()
                ? "S" + machine.control().words().power(set.power().asDouble())
                : "";
    }

    private static Markup figure(String name, String value, String unit) {
        return Markup.div(
                "",
                Markup.span("pw-small", name),
                Markup.div(
                        "",
                        Markup.span("cutting-dialled-value", value),
                        Markup.words(" "),
                        Markup.span("pw-soft", unit)));
    }
}
