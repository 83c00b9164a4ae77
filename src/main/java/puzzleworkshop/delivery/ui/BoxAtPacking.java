package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import java.util.Optional;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.bench.ui.StagePart;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.workshop.Stage;

/** At packing: which box, what it should weigh then, and what is printed for it. */
@org.springframework.stereotype.Component
class BoxAtPacking implements StagePart {

    private final PackingNotes notes;
    private final Formatter figures;

    BoxAtPacking(PackingNotes notes, Formatter figures) {
        this.notes = notes;
        this.figures = figures;
    }

    @Override
    public Stage stage() {
        return Stage.PACK;
    }

    @Override
    public Optional<Component> show(Waiting waiting, Runnable again) {
        return Optional.of(new Div(
                new H3(figures.text("delivery.box-at-packing")),
                notes.show(waiting.order(), again),
                notes.papers(waiting.order())));
    }
}
