package puzzleworkshop.bench;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.printing.PlannedPrints;
import puzzleworkshop.printing.PlannedPrints.OpenRun;
import puzzleworkshop.progress.Progress;
import puzzleworkshop.workshop.Stage;

/** What the bench asks about prints that are made in runs: whose is still to come, and whose paper is booked already. */
@Component
class RunPrints {

    private final PlannedPrints prints;
    private final Progress progress;

    RunPrints(PlannedPrints prints, Progress progress) {
        this.prints = prints;
        this.progress = progress;
    }

    /** Of those that wait at a stage, the runs that their prints are still to come out of. */
    Map<OrderId, OpenRun> stillIn(Stage stage, Collection<OrderId> orders) {
        return stage == Stage.PRINT ? prints.openRuns(orders) : Map.of();
    }

    /** Why a print is not ticked by hand. */
    static Sentence why(OpenRun run) {
        return Sentence.of(run.confirmed() ? "bench.may-not.run" : "bench.may-not.run-proposed", run.run());
    }

    /** Whose print lies in a run is ticked by it: the run books paper and film, and would be left without its print. */
    void requireNoneOpen(OrderId order) {
        Optional.ofNullable(prints.openRuns(List.of(order)).get(order)).ifPresent(run -> {
            throw new Refused(why(run));
        });
    }

    /**
     * Whether the print at hand is one that a run has booked: it was ticked by the run, that tick was taken back, and
     * nothing has gone wrong since that would ask for another print.
     */
    boolean paperIsBooked(Order order) {
        return prints.printedCopies(order.id()) >= order.quantity()
                && progress.ticks(order.id()).stream()
                        .anyMatch(tick -> tick.stage() == Stage.PRINT
                                && tick.device().equals(PrintRunTicks.DEVICE)
                                && tick.at().isAfter(progress.lastBeginning(order.id())));
    }
}
