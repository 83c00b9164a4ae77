package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.measure.Sentence;

/**
 * Rows of figures under their heads. Where there is no width for columns each row becomes a card whose figures carry
 * their heads themselves, so that nothing lies out of view.
 */
class FigureTable extends Div {

    private final List<String> figureHeads = new ArrayList<>();
    private final Div heads = new Div();
    private int words;

    FigureTable(String cssClass) {
        addClassNames("insights-list", cssClass);
        heads.addClassNames("insights-line", "insights-heads");
        add(heads);
    }

    /** A column of words: what the row is about, before the figures, or a verdict after them. */
    FigureTable word(String key) {
        return word(Sentence.of(key));
    }

    FigureTable figure(String key) {
        return figure(Sentence.of(key));
    }

    /** Heads that are filled in, for tables whose columns are known only when they are read. */
    FigureTable word(Sentence head) {
        heads.add(head(words(head), false));
        words += figureHeads.isEmpty() ? 1 : 0;
        return this;
    }

    FigureTable figure(Sentence head) {
        heads.add(head(words(head), true));
        figureHeads.add(words(head));
        return this;
    }

    private String words(Sentence head) {
        return getTranslation(head.key(), head.arguments().toArray());
    }

    /** A row, one cell for each column. */
    void row(Component... cells) {
        Div row = new Div(cells);
        row.addClassName("insights-line");
        for (int i = 0; i < figureHeads.size(); i++) {
            cells[words + i].getElement().setAttribute("data-head", figureHeads.get(i));
        }
        add(row);
    }

    private Span head(String words, boolean figure) {
        Span head = new Span(words);
        head.addClassName("insights-head");
        if (figure) {
            head.addClassName("pw-number");
        }
        return head;
    }
}
