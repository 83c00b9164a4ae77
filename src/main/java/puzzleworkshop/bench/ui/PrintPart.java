package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.Optional;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.workshop.Stage;

/** At printing: until the picture lies in a run, the way to where runs are made. In one, the card says so by itself. */
@org.springframework.stereotype.Component
class PrintPart implements StagePart {

    private final Formatter figures;

    PrintPart(Formatter figures) {
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
        Anchor way = new Anchor("print-runs", figures.text("bench.print.runs"));
        Div part = new Div(new Span(figures.text("bench.print.in-no-run")), way);
        part.addClassName("pw-row");
        return Optional.of(part);
    }
}
