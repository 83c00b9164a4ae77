package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import java.util.List;
import org.springframework.stereotype.Service;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.Notices;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.ui.TellDialog;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** Makes the card of the order that is being worked on, with what its stage needs. */
@Service
class JobCardMaker {

    private final Bench bench;
    private final Formatter figures;
    private final SignedIn signedIn;
    private final Workshop workshop;
    private final WeekPlan plan;
    private final Notices notices;
    private final List<StagePart> parts;

    JobCardMaker(
            Bench bench,
            Formatter figures,
            SignedIn signedIn,
            Workshop workshop,
            WeekPlan plan,
            Notices notices,
            List<StagePart> parts) {
        this.bench = bench;
        this.plan = plan;
        this.notices = notices;
        this.figures = figures;
        this.signedIn = signedIn;
        this.workshop = workshop;
        this.parts = parts;
    }

    /** What stands above the queue of a stage. */
    List<Component> aboveTheQueue(Stage stage) {
        return parts.stream()
                .filter(part -> part.stage() == stage)
                .flatMap(part -> part.aboveTheQueue().stream())
                .toList();
    }

    Component card(Waiting waiting, Stage stage, Runnable tick, Runnable again) {
        JobCard card = new JobCard(waiting, stage, bench, figures, signedIn, workshop, tick, again, () -> {
            again.run();
            offerWords(waiting.order());
        });
        parts.stream().filter(part -> part.stage() == stage).forEach(part -> {
            part.show(waiting, again).ifPresent(card::put);
            part.checklist(waiting).ifPresent(card::checklist);
            if (part.keepsTheClock()) {
                card.withoutClock();
            }
            card.ticking(part.tick(waiting));
        });
        return card;
    }

    /** What has to be made again may miss its day: then words for the customer lie ready at once. */
    private void offerWords(Order order) {
        plan.now()
                .of(order.id())
                .filter(entry -> entry.outlook().isLate())
                .ifPresent(entry -> new TellDialog(entry, notices, figures, signedIn.name(), () -> {}).open());
    }
}
