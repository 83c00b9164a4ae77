package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import java.util.stream.Collectors;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.media.PrintMedium;

/** Says before a day is promised that the print lies on none of the papers in the house; empty when it does. */
class PaperNote extends Div {

    private final transient Formatter figures;

    PaperNote(Formatter figures) {
        this.figures = figures;
        addClassName("neworder-paper");
        setVisible(false);
    }

    /** @param sticker finished size with its overhang */
    void show(Size sticker, List<PrintMedium> papers) {
        removeAll();
        boolean fits = papers.stream().anyMatch(paper -> paper.takes(sticker));
        setVisible(!fits);
        if (!fits) {
            String names = papers.stream().map(PrintMedium::name).collect(Collectors.joining(", "));
            Span why = new Span(figures.text("offers.new.paper.why", sticker, names));
            why.addClassName("pw-small");
            addClassName("pw-verdict-line");
            add(new Verdict(Verdict.Kind.WARN, getTranslation("offers.new.paper")), why);
        }
    }
}
