package puzzleworkshop.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.boards.BoardCuts;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.runtime.HouseClock;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** Takes a demo order through its stages as the maker would, in the hours in which the bench is open. */
@Component
class DemoBench {

    private final Orders orders;
    private final Bench bench;
    private final BoardCuts cuts;
    private final Parcels parcels;
    private final ParcelJourney journey;
    private final Workshop workshop;

    DemoBench(Orders orders, Bench bench, BoardCuts cuts, Parcels parcels, ParcelJourney journey, Workshop workshop) {
        this.orders = orders;
        this.bench = bench;
        this.cuts = cuts;
        this.parcels = parcels;
        this.journey = journey;
        this.workshop = workshop;
    }

    /**
     * Works on it from the moment it was taken.
     *
     * @param upTo the stage that is left to do next; absent: all are done
     * @param until when the last of these stages is done
     */
    void work(OrderId id, Optional<Stage> upTo, Instant taken, Instant until) {
        List<Stage> stages = Arrays.stream(Stage.values())
                .filter(stage -> upTo.isEmpty() || stage.compareTo(upTo.get()) < 0)
                .toList();
        ZoneId zone = workshop.zone();
        Duration step = BenchTime.between(taken, until, zone).dividedBy(Math.max(1, stages.size()));
        for (int i = 0; i < stages.size(); i++) {
            Stage stage = stages.get(i);
            HouseClock.at(BenchTime.after(taken, step.multipliedBy(i + 1), zone), () -> tick(id, stage));
        }
    }

    private void tick(OrderId id, Stage stage) {
        if (stage == Stage.CUT) {
            cuts.cut(id, Instant.EPOCH, DemoStock.MAKER);
            orders.completeStage(id, stage, DemoStock.MAKER);
            return;
        }
        Bench.Outcome outcome = bench.tick(BookingKey.fresh(), List.of(id), stage, DemoStock.MAKER, "");
        if (!outcome.refused().isEmpty()) {
            throw new IllegalStateException("The demo's bench: " + outcome.refused());
        }
    }

    /** Packed, and the customer may come for it. */
    void ready(OrderId id, Instant at) {
        HouseClock.at(
                at,
                () -> journey.ready(parcels.pack(List.of(id), DemoStock.MAKER).id(), DemoStock.MAKER));
    }
}
