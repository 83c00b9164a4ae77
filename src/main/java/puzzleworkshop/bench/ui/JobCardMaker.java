package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import java.util.List;
import org.springframework.stereotype.Service;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.display.Figures;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** Makes the card of the order that is being worked on, with what its stage needs. */
@Service
class JobCardMaker {

    private final Bench bench;
    private final Figures figures;
    private final SignedIn signedIn;
    private final Workshop workshop;
    private final List<StagePart> parts;

    JobCardMaker(Bench bench, Figures figures, SignedIn signedIn, Workshop workshop, List<StagePart> parts) {
        this.bench = bench;
        this.figures = figures;
        this.signedIn = signedIn;
        this.workshop = workshop;
        this.parts = parts;
    }

    /** What stands above the queue of a stage. */
    List<Component> aboveTheQueue(Stage stage) {
        return parts.stream().filter(part -> part.stage() == stage).flatMap(part -> part.aboveTheQueue().stream()).toList();
    }

    Component card(Waiting waiting, Stage stage, Runnable tick, Runnable again) {
        JobCard card = new JobCard(waiting, stage, bench, figures, signedIn, workshop, tick, again);
        parts.stream().filter(part -> part.stage() == stage).forEach(part -> {
            part.show(waiting, again).ifPresent(card::put);
            if (part.replacesChecklist()) {
                card.withoutChecklist();
            }
            if (part.keepsTheClock()) {
                card.withoutClock();
            }
            card.ticking(part.tick(waiting));
        });
        return card;
    }
}
