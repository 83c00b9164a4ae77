package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.function.Function;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.sheets.Sheet;

/** One sheet in the rack: its drawing to scale, number, place and state; leads to its page. */
class SheetCard extends Anchor {

    SheetCard(Sheet sheet, Formatter figures, RackLabels words, Function<String, String> materials, double widestMm) {
        super("sheets/number/" + sheet.id());
        addClassName("sheets-card");
        Div picture = new Div(new SheetDrawing(figures).show(sheet).toScale(sheet.outline(), widestMm));
        picture.addClassName("sheets-card-picture");
        Span number = new Span(sheet.id().toString());
        number.addClassName("sheets-number");
        Div head = new Div(number, words.state(sheet.state()));
        head.addClassName("sheets-card-head");
        Span size = new Span(words.shape(sheet));
        Span kind = new Span(words.kind(sheet.facts(), materials));
        kind.addClassName("pw-small");
        Span age = new Span(words.age(sheet));
        age.addClassName("pw-small");
        Div text = new Div(head, size, kind, age);
        text.addClassName("sheets-card-text");
        if (!sheet.facts().place().isEmpty()) {
            Span place = new Span(figures.text("sheets.at", sheet.facts().place()));
            place.addClassName("pw-small");
            text.add(place);
        }
        if (!sheet.facts().past().isFitForCutting()) {
            Span past =
                    new Span(figures.text("sheets.past." + sheet.facts().past().name()));
            past.addClassNames("pw-small", "sheets-warns");
            text.add(past);
        }
        add(picture, text);
    }
}
