package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.html.Paragraph;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.offers.Offer;

/** What is wrong, beside the question it belongs to; out of sight while nothing is. */
class FieldError extends Paragraph {

    private final transient Formatter figures;
    private final Offer.Question question;

    FieldError(Offer.Question question, Formatter figures) {
        this.question = question;
        this.figures = figures;
        addClassName("pw-note");
        getElement().setAttribute("data-kind", "bad");
        getElement().setAttribute("role", "alert");
        setVisible(false);
    }

    void show(Offer offer) {
        Optional<Sentence> sentence = Optional.ofNullable(offer.complaints().get(question));
        setText(sentence.map(figures::say).orElse(""));
        setVisible(sentence.isPresent());
    }

    void say(String sentence) {
        setText(sentence);
        setVisible(!sentence.isEmpty());
    }
}
