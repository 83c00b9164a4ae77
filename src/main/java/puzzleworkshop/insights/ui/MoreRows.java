package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import java.util.List;
import java.util.function.Consumer;
import puzzleworkshop.display.Formatter;

/** A table that shows its first rows, and more of them when they are asked for. */
class MoreRows<T> extends Div {

    private static final int FIRST = 12;
    private static final int MORE = 50;

    private final transient List<T> all;
    private final transient Consumer<T> row;
    private final transient Formatter figures;
    private final Button more;
    private int shown;

    /** @param row adds the row of one to the table */
    MoreRows(FigureTable table, List<T> all, Consumer<T> row, Formatter figures) {
        this.all = all;
        this.row = row;
        this.figures = figures;
        addClassName("pw-stack");
        more = new Button("", event -> show(MORE));
        more.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        add(table, more);
        show(FIRST);
    }

    private void show(int rows) {
        int upTo = Math.min(all.size(), shown + rows);
        all.subList(shown, upTo).forEach(row);
        shown = upTo;
        int left = all.size() - shown;
        more.setVisible(left > 0);
        more.setText(figures.text("insights.more", Math.min(left, MORE), Math.max(0, left - MORE)));
    }
}
