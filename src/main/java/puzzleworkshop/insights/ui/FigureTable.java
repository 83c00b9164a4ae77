package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.measure.Sentence;

/**
 * Rows of figures under their heads. Where there is no width for columns each row becomes a card whose figures carry
 * their heads themselves, so that nothing lies out of view.
 */
class FigureTable extends Div {

    private static final String LINE = "insights-line";

    private final List<String> figureHeads = new ArrayList<>();
    private final Heads heads = new Heads();
    private int words;

    FigureTable(String cssClass) {
        addClassNames("insights-list", cssClass);
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
        heads.add(Markup.span("insights-head", words(head)));
        words += figureHeads.isEmpty() ? 1 : 0;
        return this;
    }

    FigureTable figure(Sentence head) {
        heads.add(Markup.span("insights-head pw-number", words(head)));
        figureHeads.add(words(head));
        return this;
    }

    private String words(Sentence head) {
        return getTranslation(head.key(), head.arguments().toArray());
    }

    /** A row, one cell for each column. */
    void row(Markup... cells) {
        List<Markup> headed = new ArrayList<>();
        for (int i = 0; i < cells.length; i++) {
            headed.add(headed(cells[i], i));
        }
        add(new Still(Markup.div(LINE, headed)));
    }

    /** A row whose first cell is pressed. */
    void row(Component first, List<Markup> others) {
        Div row = new Div(first);
        row.addClassName(LINE);
        for (int i = 0; i < others.size(); i++) {
            row.add(new Still(headed(others.get(i), i + 1)));
        }
        add(row);
    }

    private Markup headed(Markup cell, int column) {
        int figure = column - words;
        return figure >= 0 && figure < figureHeads.size() ? cell.with("data-head", figureHeads.get(figure)) : cell;
    }

    private static final class Heads extends Still {

        private final transient List<Markup> heads = new ArrayList<>();

        private Heads() {
            super(Markup.div(LINE + " insights-heads"));
        }

        private void add(Markup head) {
            heads.add(head);
            show(heads);
        }
    }
}
