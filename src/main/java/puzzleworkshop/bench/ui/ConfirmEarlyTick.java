package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.SafeQuestion;
import puzzleworkshop.measure.Sentence;

/** Asks once before a stage is ticked that should still wait: what lies to rest, or an order whose payment comes first. */
final class ConfirmEarlyTick {

    private ConfirmEarlyTick() {}

    static void ask(List<Waiting> which, Formatter figures, Runnable tick) {
        List<Sentence> reasons = new ArrayList<>();
        for (Waiting waiting : which) {
            String number = waiting.order().number();
            waiting.restsUntil().ifPresent(until -> reasons.add(Sentence.of("bench.ask.rests", number, until)));
            waiting.unpaidSince().ifPresent(since -> reasons.add(Sentence.of("bench.ask.unpaid", number, since)));
        }
        if (reasons.isEmpty()) {
            tick.run();
            return;
        }
        Div words = new Div();
        words.addClassName("pw-stack");
        reasons.forEach(reason -> words.add(new Paragraph(figures.say(reason))));
        SafeQuestion dialog = new SafeQuestion(
                figures.text("bench.ask.title"), figures.text("bench.ask.keep"), figures.text("bench.ask.do"));
        dialog.setText(words);
        dialog.addConfirmListener(event -> tick.run());
        dialog.open();
    }
}
