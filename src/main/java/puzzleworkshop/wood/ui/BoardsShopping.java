package puzzleworkshop.wood.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.UIDetachedException;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.supplies.ui.ShoppingSection;
import puzzleworkshop.wood.BuyAdvice;
import puzzleworkshop.wood.WoodAdvice;

/** Boards to order on the shopping list: how many of which, without prices, because helpers see this page too. */
@org.springframework.stereotype.Component
class BoardsShopping implements ShoppingSection {

    private final WoodAdvice advice;
    private final Formatter figures;

    BoardsShopping(WoodAdvice advice, Formatter figures) {
        this.advice = advice;
        this.figures = figures;
    }

    /** Empty at first; filled when the weeks to come have been played. */
    @Override
    public com.vaadin.flow.component.Component show() {
        Div lines = new Div();
        UI ui = UI.getCurrent();
        UiPush.beside("boards to buy", () -> {
            List<BuyAdvice> kinds = advice.buy();
            try {
                ui.access(() -> kinds.stream()
                        .flatMap(kind -> kind.lines().stream())
                        .filter(line -> line.count() > 0)
                        .forEach(line -> lines.add(row(line))));
            } catch (UIDetachedException left) {
                // The page was left; nobody waits for it any more.
            }
        });
        return lines;
    }

    private Div row(BuyAdvice.Line line) {
        Div row = new Div(new Span(figures.text("wood.buy.shopping", line.count(), WoodView.name(figures, line))));
        row.addClassName("supplies-shopping");
        return row;
    }
}
