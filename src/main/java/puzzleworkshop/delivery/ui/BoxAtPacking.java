package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.bench.ui.StagePart;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.delivery.boxes.Boxes;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.Stage;

/** At packing: which box, what it should weigh then, and what is printed for it. */
@org.springframework.stereotype.Component
class BoxAtPacking implements StagePart {

    private final PackingNotes notes;
    private final Boxes boxes;
    private final Addresses addresses;
    private final Formatter figures;

    BoxAtPacking(PackingNotes notes, Boxes boxes, Addresses addresses, Formatter figures) {
        this.notes = notes;
        this.boxes = boxes;
        this.addresses = addresses;
        this.figures = figures;
    }

    @Override
    public Stage stage() {
        return Stage.PACK;
    }

    @Override
    public Optional<Component> show(Waiting waiting, Runnable again) {
        Order order = waiting.order();
        return Optional.of(new Div(
                new H3(figures.text("delivery.box-at-packing")),
                notes.show(order, boxes.notes(List.of(order)), again),
                notes.papers(order, addresses.of(order))));
    }
}
