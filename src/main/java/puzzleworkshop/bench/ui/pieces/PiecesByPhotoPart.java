package puzzleworkshop.bench.ui.pieces;

import com.vaadin.flow.component.Component;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.springframework.core.annotation.Order;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.bench.PackingProofs;
import puzzleworkshop.bench.ui.StagePart;
import puzzleworkshop.bench.ui.WrongDialog;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.ui.photo.PrintedSheet;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** At packing: are all pieces there, told by photos. */
@org.springframework.stereotype.Component
@Order(20)
class PiecesByPhotoPart implements StagePart {

    private final PackingProofs proofs;
    private final PatternCache patterns;
    private final PieceAgainParts again;
    private final MeasuredOutlines measured;
    private final Bench bench;
    private final Workshop workshop;
    private final Formatter figures;
    private final SignedIn signedIn;

    PiecesByPhotoPart(
            PackingProofs proofs,
            PatternCache patterns,
            PieceAgainParts again,
            MeasuredOutlines measured,
            Bench bench,
            Workshop workshop,
            Formatter figures,
            SignedIn signedIn) {
        this.proofs = proofs;
        this.patterns = patterns;
        this.again = again;
        this.measured = measured;
        this.bench = bench;
        this.workshop = workshop;
        this.figures = figures;
        this.signedIn = signedIn;
    }

    @Override
    public Stage stage() {
        return Stage.PACK;
    }

    @Override
    public Optional<Component> show(Waiting waiting, Runnable changed) {
        BiConsumer<Rework.What, Stage> back = (what, from) -> {
            WrongDialog wrong =
                    new WrongDialog(waiting.order(), Stage.PACK, bench, figures, signedIn, workshop, changed);
            wrong.propose(what, from);
            wrong.open();
        };
        return Optional.of(new PiecesByPhoto(
                waiting.order(),
                patterns.of(waiting.order().puzzle().pattern()),
                proofs,
                again,
                new PrintedSheet(figures, measured, signedIn),
                figures,
                signedIn.name(),
                back));
    }
}
