package puzzleworkshop.bench;

import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.payments.PaymentsAwaited;
import puzzleworkshop.progress.Progress;
import puzzleworkshop.progress.Rests;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;
import puzzleworkshop.workshop.Workshop;

/** What was done before it had rested, or before its payment came, is not refused; it stands in the order's history. */
@Component
class EarlyWorkNotes {

    private final Progress progress;
    private final Orders orders;
    private final PaymentsAwaited payments;
    private final Workshop workshop;
    private final Clock clock;

    EarlyWorkNotes(Progress progress, Orders orders, PaymentsAwaited payments, Workshop workshop, Clock clock) {
        this.progress = progress;
        this.orders = orders;
        this.payments = payments;
        this.workshop = workshop;
        this.clock = clock;
    }

    /** Until when what orders need at a stage should still lie; those that need not wait are left out. */
    Map<OrderId, Instant> restsUntil(Stage stage, Collection<OrderId> orders) {
        Map<Stage, StageStandard> standards = workshop.stageStandards();
        Map<OrderId, Instant> until = new HashMap<>();
        Instant now = clock.instant();
        progress.lastByStage(orders)
                .forEach((order, done) -> Optional.ofNullable(
                                Rests.until(done, stage, standards).get(stage))
                        .filter(now::isBefore)
                        .ifPresent(rested -> until.put(order, rested)));
        return until;
    }

    /** Asked before the stage is ticked, in the same transaction. */
    void note(Order order, Stage stage, String who) {
        Sentence name = Sentence.of(stage.textKey());
        Optional.ofNullable(restsUntil(stage, List.of(order.id())).get(order.id()))
                .ifPresent(until -> orders.note(order.id(), Sentence.of("bench.history.early", name, until), who));
        Optional.ofNullable(payments.open().get(order.id()))
                .ifPresent(since -> orders.note(order.id(), Sentence.of("bench.history.unpaid", name, since), who));
    }
}
