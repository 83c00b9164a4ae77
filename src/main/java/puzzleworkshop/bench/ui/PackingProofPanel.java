package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.bench.PackingProof;
import puzzleworkshop.bench.PackingProof.ProofPhoto;
import puzzleworkshop.bench.PackingProofs;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPanel;

/** On the order's page: what was counted in photos before it was packed. */
@org.springframework.stereotype.Component
class PackingProofPanel implements OrderPanel {

    private static final int AFTER_PROGRESS = 12;

    private final PackingProofs proofs;
    private final Formatter figures;

    PackingProofPanel(PackingProofs proofs, Formatter figures) {
        this.proofs = proofs;
        this.figures = figures;
    }

    @Override
    public int place() {
        return AFTER_PROGRESS;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        List<PackingProof> kept = proofs.of(order.id());
        if (kept.isEmpty()) {
            return Optional.empty();
        }
        Div panel = new Box();
        panel.add(new H2(figures.text("bench.pieces.proofs")));
        for (PackingProof proof : kept) {
            Details details = new Details(words(order, proof));
            details.addOpenedChangeListener(event -> {
                if (event.isOpened() && details.getContent().findAny().isEmpty()) {
                    details.add(pictures(proof));
                }
            });
            panel.add(details);
        }
        return Optional.of(panel);
    }

    private Div pictures(PackingProof proof) {
        Div pictures = new Div();
        pictures.addClassName("pw-stack");
        if (!proof.missing().isEmpty()) {
            pictures.add(new Paragraph(figures.text(
                    "bench.pieces.proof.missing",
                    proof.missing().stream()
                            .map(group -> String.join(
                                    "/", group.stream().map(String::valueOf).toList()))
                            .collect(java.util.stream.Collectors.joining(", ")))));
        }
        if (!proof.troubles().isEmpty()) {
            pictures.add(new Paragraph(proof.troubles()));
        }
        List<ProofPhoto> photos = proofs.photos(proof.id());
        for (int i = 0; i < photos.size(); i++) {
            pictures.add(ProofPicture.of(proof, i, photos.get(i), figures));
        }
        return pictures;
    }

    private String words(Order order, PackingProof proof) {
        return figures.text(
                proof.isComplete() ? "bench.pieces.proof.all" : "bench.pieces.proof.some",
                proof.seen() - proof.foreign(),
                proof.expected(),
                proof.who(),
                figures.moment(proof.at()),
                proof.puzzle(),
                order.quantity());
    }

    /** Brings its own look along, wherever it is shown. */
    @StyleSheet("context://bench.css")
    private static final class Box extends Div {
        Box() {
            addClassName("pw-section");
        }
    }
}
