package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.ArrayList;
import java.util.List;

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
        heads.add(head(key, false));
        words += figureHeads.isEmpty() ? 1 : 0;
        return this;
    }

    FigureTable figure(String key) {
        heads.add(head(key, true));
        figureHeads.add(getTranslation(key));
        return this;
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

    private Span head(String key, boolean figure) {
        Span head = new Span(getTranslation(key));
        head.addClassName("insights-head");
        if (figure) {
            head.addClassName("pw-number");
        }
        return head;
    }
}
