package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.judged.StickingCheck;

/** Whether the outer cut stays inside the print when the sticker lies a little off, with the numbers. */
@StyleSheet("context://pattern.css")
public class StickingVerdict extends Div {

    /**
     * @param outline that was checked, for the drawing of the worst position
     * @param finished size of the puzzle
     */
    public StickingVerdict(StickingCheck check, CurvePath outline, Size finished, Formatter figures) {
        addClassName("pw-stack");
        add(new Verdict(
                check.inside() ? Verdict.Kind.GOOD : Verdict.Kind.WARN,
                getTranslation(check.inside() ? "pattern.sticking.word.inside" : "pattern.sticking.word.outside")));
        String key = check.inside() ? "pattern.sticking.inside" : "pattern.sticking.outside";
        add(new Paragraph(getTranslation(
                key,
                figures.length(check.overhang()),
                figures.length(check.shift()),
                figures.number(check.turnDegrees(), 2),
                figures.length(Length.mm(Math.abs(check.spare().mm()))),
                figures.length(check.overhangNeeded()),
                getTranslation("pattern.sticking.side." + check.narrowest().name()))));
        if (!check.inside()) {
            add(new StickingDrawing(check, outline, finished));
        }
    }
}
