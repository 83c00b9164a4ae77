package puzzleworkshop.wood.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Money;
import puzzleworkshop.wood.Replay;

/** What the past year would have cost by each rule, where the program's own lost included. */
class ReplaySaid extends Div {

    ReplaySaid(Replay replay, Formatter figures) {
        Money saved = replay.saved();
        add(
                new Paragraph(figures.text("wood.replay.of", replay.weeks(), replay.blanks(), replay.kinds())),
                rule(figures, "wood.replay.nearest", replay.nearest()),
                rule(figures, "wood.replay.here", replay.here()),
                rule(figures, "wood.replay.ahead", replay.ahead()),
                new Paragraph(figures.text(
                        saved.isNegative() ? "wood.replay.lost" : "wood.replay.saved",
                        saved.isNegative() ? saved.negated() : saved,
                        replay.weeksLost())));
    }

    private static Div rule(Formatter figures, String key, Replay.Rule rule) {
        Span cost = new Span(figures.money(rule.cost()));
        cost.addClassName("pw-number");
        Div row = new Div(new Span(figures.text(key)), cost);
        if (rule.stranded() > 0) {
            Span stranded = new Span(figures.text("wood.replay.stranded", rule.stranded()));
            stranded.addClassName("pw-small");
            row.add(stranded);
        }
        row.addClassName("wood-line");
        return row;
    }
}
