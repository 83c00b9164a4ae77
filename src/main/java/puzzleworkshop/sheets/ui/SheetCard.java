package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.sheets.Sheet;

/** One sheet in the rack: its drawing to scale, number, place and state; leads to its page. */
class SheetCard extends Anchor {

    SheetCard(Sheet sheet, Formatter figures, RackLabels words, Function<String, String> materials, double widestMm) {
        super("sheets/number/" + sheet.id());
        addClassName("sheets-card");
        Div picture = new Div(new SheetDrawing(figures).show(sheet).toScale(sheet.outline(), widestMm));
        picture.addClassName("sheets-card-picture");
        List<Markup> lines = new ArrayList<>();
        lines.add(Markup.div(
                "sheets-card-head",
                Markup.span("sheets-number", sheet.id().toString()),
                words.stateMark(sheet.state())));
        lines.add(Markup.span(words.shape(sheet)));
        lines.add(Markup.span("pw-small", words.kind(sheet.facts(), materials)));
        lines.add(Markup.span("pw-small", words.age(sheet)));
        if (!sheet.facts().place().isEmpty()) {
            lines.add(Markup.span(
                    "pw-small", figures.text("sheets.at", sheet.facts().place())));
        }
        if (!sheet.facts().past().isFitForCutting()) {
            lines.add(Markup.span(
                    "pw-small sheets-warns",
                    figures.text("sheets.past." + sheet.facts().past().name())));
        }
        add(picture, new Still(Markup.div("sheets-card-text", lines)));
    }
}
