package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.Optional;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.printing.PlannedPrints;
import puzzleworkshop.workshop.Stage;

/** At printing: in which run the picture lies, and the way to its file; until it lies in one, the way to where runs are made. */
@org.springframework.stereotype.Component
class PrintPart implements StagePart {

    private final PlannedPrints prints;
    private final Formatter figures;

    PrintPart(PlannedPrints prints, Formatter figures) {
        this.prints = prints;
        this.figures = figures;
    }

    @Override
    public Stage stage() {
        return Stage.PRINT;
    }

    @Override
    public Optional<Component> show(Waiting waiting, Runnable again) {
        if (waiting.mayNot().isPresent()) {
            return Optional.empty();
        }
        String where = prints.inRuns().stream()
                .filter(in -> in.order().equals(waiting.order().id()) && !in.printed())
                .findFirst()
                .map(in -> figures.text("bench.print.in-run", in.run()))
                .orElseGet(() -> figures.text("bench.print.in-no-run"));
        Anchor way = new Anchor("print-runs", figures.text("bench.print.runs"));
        Div part = new Div(new Span(where), way);
        part.addClassName("pw-row");
        return Optional.of(part);
    }
}
