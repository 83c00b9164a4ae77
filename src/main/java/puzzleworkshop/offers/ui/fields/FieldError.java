package puzzleworkshop.offers.ui.fields;

import com.vaadin.flow.component.Text;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.offers.Offer;

/** What is wrong, beside the question it belongs to; out of sight while nothing is. */
public class FieldError extends Paragraph {

    /** A page of the program, and the words that lead there. */
    private record Page(String address, String words) {}

    /** Where it is mended, for what is not mended on this page. */
    private static final Map<String, Page> MENDED_AT =
            Map.of("offers.problem.no-machine", new Page("machines", "offers.problem.no-machine.open"));

    private final transient Formatter figures;
    private final Offer.Question question;

    public FieldError(Offer.Question question, Formatter figures) {
        this.question = question;
        this.figures = figures;
        addClassName("pw-note");
        getElement().setAttribute("data-kind", "bad");
        getElement().setAttribute("role", "alert");
        setVisible(false);
    }

    public void show(Offer offer) {
        Optional<Sentence> sentence = Optional.ofNullable(offer.complaints().get(question));
        say(sentence.map(figures::say).orElse(""));
        sentence.map(Sentence::key)
                .map(MENDED_AT::get)
                .ifPresent(page -> add(new Text(" "), new Anchor(page.address(), getTranslation(page.words()))));
    }

    public void say(String sentence) {
        setText(sentence);
        setVisible(!sentence.isEmpty());
    }
}
