package puzzleworkshop.cutting.ui.settings;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;

/** What is dialled in, as numbers to be read from a step away: speed both ways, power, passes, air, gap. */
public class DialledIn extends Still {

    public DialledIn(CutParameters parameters, Formatter figures) {
        super(Markup.div(
                "cutting-dialled",
                number(
                        figures.text("cutting.speed"),
                        figures.number(parameters.speed().toMmPerMinute(), 1),
                        "mm/min",
                        figures.text(
                                "cutting.speed.other",
                                figures.number(parameters.speed().mmPerSecond(), 2))),
                number(
                        figures.text("cutting.power"),
                        figures.number(parameters.power().hundredths().doubleValue(), 1),
                        "%",
                        ""),
                number(figures.text("cutting.passes"), Integer.toString(parameters.passes()), "×", ""),
                number(
                        figures.text("cutting.gap"),
                        figures.number(figures.units().valueOf(parameters.gap()), 2),
                        figures.units().symbol(),
                        ""),
                number(
                        figures.text("cutting.air"),
                        figures.text(parameters.airAssist() ? "cutting.on" : "cutting.off"),
                        "",
                        "")));
    }

    private static Markup number(String name, String value, String unit, String below) {
        List<Markup> parts = new ArrayList<>();
        parts.add(Markup.span("pw-small", name));
        parts.add(Markup.of(
                "span",
                "",
                Markup.span("cutting-dialled-value", value),
                Markup.words(" "),
                Markup.span("pw-unit", unit)));
        if (!below.isEmpty()) {
            parts.add(Markup.span("pw-small", below));
        }
        return Markup.div("", parts);
    }
}
