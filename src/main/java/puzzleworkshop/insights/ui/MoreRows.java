package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import java.util.List;
import java.util.function.Function;
import puzzleworkshop.display.Formatter;

/** A table that shows its first rows, and more of them when they are asked for. */
class MoreRows<T> extends Div {

    private static final int FIRST = 12;
    private static final int MORE = 50;

    private final FigureTable table;
    private final transient List<T> all;
    private final transient Function<T, Component[]> cells;
    private final transient Formatter figures;
    private final Button more;
    private int shown;

    MoreRows(FigureTable table, List<T> all, Function<T, Component[]> cells, Formatter figures) {
        this.table = table;
        this.all = all;
        this.cells = cells;
        this.figures = figures;
        addClassName("pw-stack");
        more = new Button("", event -> show(MORE));
        more.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        add(table, more);
        show(FIRST);
    }

    private void show(int rows) {
        int upTo = Math.min(all.size(), shown + rows);
        all.subList(shown, upTo).forEach(item -> table.row(cells.apply(item)));
        shown = upTo;
        int left = all.size() - shown;
        more.setVisible(left > 0);
        more.setText(figures.text("insights.more", Math.min(left, MORE), Math.max(0, left - MORE)));
    }
}
