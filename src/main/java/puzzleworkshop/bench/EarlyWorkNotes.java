package puzzleworkshop.bench;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.payments.PaymentsAwaited;
import puzzleworkshop.progress.Progress;
import puzzleworkshop.workshop.Stage;
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

    /** How long what was done before a stage must lie. */
    Duration restBefore(Stage stage) {
        return stage == Stage.PRINT
                ? Duration.ZERO
                : workshop.stageStandards()
                        .get(Stage.values()[stage.ordinal() - 1])
                        .rest();
    }

    /** Asked before the stage is ticked, in the same transaction. */
    void note(Order order, Stage stage, String who) {
        Sentence name = Sentence.of(stage.textKey());
        Optional<Instant> rested = Optional.ofNullable(
                        progress.lastDone(List.of(order.id())).get(order.id()))
                .map(at -> at.plus(restBefore(stage)));
        rested.filter(clock.instant()::isBefore)
                .ifPresent(until -> orders.note(order.id(), Sentence.of("bench.history.early", name, until), who));
        Optional.ofNullable(payments.open().get(order.id()))
                .ifPresent(since -> orders.note(order.id(), Sentence.of("bench.history.unpaid", name, since), who));
    }
}
