package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.list.StockTaking;
import puzzleworkshop.workshop.SignedIn;

/** While stock is taken, the label's code has led somebody to a sheet's page who holds the piece in hand. */
public class TickHere extends Div {

    public TickHere(
            SheetId sheet,
            StockTaking.Walk walk,
            StockTaking taking,
            SignedIn who,
            Formatter figures,
            Runnable ticked) {
        Button here = new Button(figures.text("sheets.stock.tick"), event -> {
            if (Feedback.unlessRefused(
                    figures,
                    Sentence.of("sheets.stock.tickedhere", sheet.toString()),
                    () -> taking.seen(sheet, who.name()))) {
                ticked.run();
            }
        });
        here.addThemeVariants(ButtonVariant.PRIMARY);
        here.setEnabled(!taking.isSeen(sheet));
        add(
                here,
                new Span(figures.text("sheets.stock.count", walk.seen(), walk.expected())),
                new Anchor("sheets/stock-take", figures.text("sheets.stock.title")));
        addClassNames("pw-row", "sheets-tick-here");
    }
}
