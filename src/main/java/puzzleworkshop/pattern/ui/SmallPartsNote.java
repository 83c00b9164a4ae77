package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.pattern.smallparts.SmallPartsVerdict;

/** Whether a puzzle has small parts for whom it is meant, the text its box needs, and what was computed. */
@StyleSheet("context://pattern.css")
public class SmallPartsNote extends Div {

    public SmallPartsNote(SmallPartsVerdict verdict, Formatter figures) {
        addClassName("pw-stack");
        Verdict.Kind kind = !verdict.saleable()
                ? Verdict.Kind.BAD
                : verdict.boxText().isPresent() ? Verdict.Kind.WARN : Verdict.Kind.GOOD;
        String word = verdict.hasSmallParts() ? "pattern.small_parts.word.some" : "pattern.small_parts.word.none";
        Div line = new Div(new Verdict(kind, figures.text(word)), new Paragraph(figures.say(verdict.headline())));
        line.addClassName("pw-verdict-line");
        add(line);
        verdict.boxText().ifPresent(text -> {
            Paragraph box = new Paragraph(figures.text("pattern.small_parts.on-the-box", figures.say(text)));
            box.addClassName("pattern-box-text");
            add(box);
        });
        verdict.notes().forEach(note -> {
            SmallText small = new SmallText(figures.say(note));
            add(small);
        });
    }
}
