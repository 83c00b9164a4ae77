package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.pattern.CutPattern;

/** Whether a piece seems to fit where it does not belong, by its edges or as a personal piece that could change places with another. */
public class FalseFitNote extends Div {

    public FalseFitNote(CutPattern pattern, Formatter figures) {
        addClassName("pw-verdict-line");
        CutPattern.Verified verified = pattern.verified();
        if (!verified.alikeShapes().isEmpty()) {
            add(
                    new Verdict(Verdict.Kind.WARN, figures.text("pattern.draw.alike-shapes.word")),
                    new Paragraph(figures.text(
                            "pattern.draw.alike-shapes",
                            verified.alikeShapes().getFirst(),
                            verified.alikeShapes().getLast())));
        } else if (!verified.edgesTold()) {
            add(new Verdict(Verdict.Kind.WARN, figures.text("pattern.draw.alike")));
        } else {
            add(new Verdict(Verdict.Kind.GOOD, figures.text("pattern.draw.unlike")));
        }
    }

    /** Whether there is something to be said. */
    public static boolean isNeeded(CutPattern pattern) {
        return !pattern.verified().edgesTold()
                || !pattern.verified().alikeShapes().isEmpty();
    }
}
