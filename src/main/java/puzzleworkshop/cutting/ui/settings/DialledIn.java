package puzzleworkshop.cutting.ui.settings;

import com.vaadin.flow.component.Text;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.display.Formatter;

/** What is dialled in, as numbers to be read from a step away: speed both ways, power, passes, air, gap. */
public class DialledIn extends Div {

    private final transient Formatter figures;

    public DialledIn(CutParameters parameters, Formatter figures) {
        this.figures = figures;
        addClassName("cutting-dialled");
        number(
                "cutting.speed",
                figures.number(parameters.speed().toMmPerMinute(), 1),
                "mm/min",
                figures.text(
                        "cutting.speed.other", figures.number(parameters.speed().mmPerSecond(), 2)));
        number("cutting.power", figures.number(parameters.power().hundredths().doubleValue(), 1), "%", "");
        number("cutting.passes", Integer.toString(parameters.passes()), "×", "");
        number(
                "cutting.gap",
                figures.number(figures.units().valueOf(parameters.gap()), 2),
                figures.units().symbol(),
                "");
        number("cutting.air", figures.text(parameters.airAssist() ? "cutting.on" : "cutting.off"), "", "");
    }

    private void number(String key, String value, String unit, String below) {
        Span name = new Span(figures.text(key));
        name.addClassName("pw-small");
        Span big = new Span(value);
        big.addClassName("cutting-dialled-value");
        Span small = new Span(unit);
        small.addClassName("pw-unit");
        Div whole = new Div(name, new Span(big, new Text(" "), small));
        if (!below.isEmpty()) {
            Span other = new Span(below);
            other.addClassName("pw-small");
            whole.add(other);
        }
        add(whole);
    }
}
