package puzzleworkshop.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.cutting.jobs.CheckItem;
import puzzleworkshop.cutting.jobs.CutEnds;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.Workpiece;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.orders.Order;
import puzzleworkshop.runtime.HouseClock;
import puzzleworkshop.workshop.Workshop;

/** Cuts of the demo workshop's past year, each with its checklist, at the laser that stood there then. */
@Component
class PastCuts {

    /** The small grey laser stood there until then. */
    private static final int CHANGED_MONTHS_AGO = 6;

    private final CutJobs jobs;
    private final CutEnds ended;
    private final Machines machines;
    private final Workshop workshop;

    PastCuts(CutJobs jobs, CutEnds ended, Machines machines, Workshop workshop) {
        this.jobs = jobs;
        this.ended = ended;
        this.machines = machines;
        this.workshop = workshop;
    }

    /**
     * Ends at a moment, called while the clock tells today: which laser stood there is counted back from now.
     *
     * @param takes of the time that was estimated
     */
    void cut(Order order, Instant ends, double takes) {
        machineOf(ends).ifPresent(machine -> {
            CutJob[] job = new CutJob[1];
            CutTime estimate = estimate(order, machine);
            Duration ran = Duration.ofSeconds((long) (estimate.running().toSeconds() * takes));
            HouseClock.at(ends.minus(ran), () -> job[0] = begun(order, machine, estimate));
            HouseClock.at(
                    ends,
                    () -> ended.finish(
                            BookingKey.seen("cut-ended", job[0].id()),
                            job[0].id(),
                            job[0].parameters().passes(),
                            Trial.Finding.of(Trial.Result.THROUGH, 1),
                            Optional.empty(),
                            DemoStock.MAKER));
        });
    }

    private CutJob begun(Order order, Machine machine, CutTime estimate) {
        CutJob job = jobs.prepare(
                new CutJob.Wish(
                        Optional.of(order.id()),
                        order.number(),
                        machine.id(),
                        Workpiece.clean(order.board()),
                        Optional.of(estimate)),
                DemoStock.MAKER);
        jobs.check(job.id(), List.of(CheckItem.values()), DemoStock.MAKER);
        return jobs.start(job.id(), DemoStock.MAKER);
    }

    /** By what the order was promised with; its lines are not drawn again for each cut of a year. */
    private static CutTime estimate(Order order, Machine machine) {
        Minutes setUp = machine.setUp().times(order.quantity());
        Minutes running = Minutes.ofSeconds(Math.max(60, order.laser().toSeconds() - setUp.toSeconds()));
        return new CutTime(running, Minutes.ZERO, Minutes.ZERO, setUp);
    }

    private Optional<Machine> machineOf(Instant at) {
        ZonedDateTime changed = workshop.today().minusMonths(CHANGED_MONTHS_AGO).atStartOfDay(workshop.zone());
        boolean former = at.isBefore(changed.toInstant());
        return machines.all().stream()
                .filter(machine -> machine.retired() == former)
                .findFirst();
    }
}
