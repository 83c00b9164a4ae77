package puzzleworkshop.artwork.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import puzzleworkshop.artwork.Hints;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.PrintLimits;
import puzzleworkshop.artwork.Resolution;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;

/** Whether a picture is good enough for a size: the verdict, the numbers behind it, and what to look at closely. */
@StyleSheet("context://artwork.css")
public class PictureJudgement extends Div {

    /** What a customer can do something about; the rest is the workshop's business. */
    private static final Map<String, String> PLAIN = Map.of(
            "artwork.hint.too-coarse", "artwork.hint.too-coarse.plain",
            "artwork.hint.soft", "artwork.hint.soft.plain",
            "artwork.hint.blurred", "artwork.hint.blurred.plain");

    private final Formatter figures;
    private boolean plain;

    public PictureJudgement(Formatter figures) {
        this.figures = figures;
        addClassName("artwork-judgement");
        getElement().setAttribute("aria-live", "polite");
    }

    /** In words for somebody who does not print: no resolution, no overhang. */
    public PictureJudgement inPlainWords() {
        plain = true;
        return this;
    }

    public void show(Picture picture, Crop crop, Size finished, Length overhang, PrintLimits limits) {
        show(picture, crop, Resolution.judge(picture, crop, finished, overhang, limits), limits);
    }

    /** The same where it is judged already. */
    public void show(Picture picture, Crop crop, Resolution resolution, PrintLimits limits) {
        removeAll();
        Verdict verdict = new Verdict(
                kind(resolution.verdict()), getTranslation(resolution.verdict().textKey()));
        Span numbers = new Span(
                plain
                        ? figures.text("artwork.judged.plain", resolution.sharpUpTo())
                        : figures.text("artwork.judged", Math.round(resolution.ppi()), resolution.sharpUpTo()));
        Div line = new Div(verdict, numbers);
        line.addClassName("pw-verdict-line");
        add(line);
        List<Sentence> hints = new ArrayList<>(picture.notices());
        hints.addAll(Hints.of(picture, crop, resolution, limits));
        if (plain) {
            hints.removeIf(hint -> !PLAIN.containsKey(hint.key()));
            hints.replaceAll(hint -> Sentence.of(PLAIN.get(hint.key())));
        }
        if (!hints.isEmpty()) {
            UnorderedList list = new UnorderedList();
            list.addClassName("artwork-hints");
            hints.forEach(hint -> list.add(new ListItem(figures.say(hint))));
            add(list);
        }
    }

    private static Verdict.Kind kind(Resolution.Verdict verdict) {
        return switch (verdict) {
            case SHARP, GOOD -> Verdict.Kind.GOOD;
            case SOFT -> Verdict.Kind.WARN;
            case REFUSE -> Verdict.Kind.BAD;
        };
    }
}
