package puzzleworkshop.bench;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.springframework.stereotype.Component;
import puzzleworkshop.boards.BoardCuts;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.progress.Progress;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.progress.Tick;
import puzzleworkshop.sheets.Cut;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;
import puzzleworkshop.workshop.Workshop;

/** What is lost when something went wrong: worked out before it is booked, so that the dialog can show it. */
@Component
class LostWork {

    private final Progress progress;
    private final Orders orders;
    private final SheetRack rack;
    private final BoardCuts cuts;
    private final StageConsumption usedUp;
    private final Workshop workshop;
    private final CutJobs cutJobs;
    private final Clock clock;

    LostWork(
            Progress progress,
            Orders orders,
            SheetRack rack,
            BoardCuts cuts,
            StageConsumption usedUp,
            Workshop workshop,
            CutJobs cutJobs,
            Clock clock) {
        this.progress = progress;
        this.orders = orders;
        this.rack = rack;
        this.cuts = cuts;
        this.usedUp = usedUp;
        this.workshop = workshop;
        this.cutJobs = cutJobs;
        this.clock = clock;
    }

    /**
     * What is lost: the work of the stages that are made again, by the clock where one ran and by the standards where
     * none did; the laser's time as the cuts on record took it; what was used up since the last new beginning, when the print is lost.
     */
    Rework of(Order order, Rework.Report report, String who) {
        Stage noticed = order.next().orElse(Stage.HAND_OVER);
        if (report.againFrom().compareTo(noticed) > 0) {
            throw new Refused("bench.wrong.forwards", order.number(), Sentence.of(noticed.textKey()));
        }
        OrderId id = order.id();
        Instant lastBeginning = progress.lastBeginning(id);
        List<Tick> ticks = progress.ticks(id).stream()
                .filter(tick -> !tick.undone()
                        && !tick.stage().equals(noticed)
                        && tick.at().isAfter(lastBeginning))
                .filter(tick -> tick.stage().compareTo(report.againFrom()) >= 0)
                .toList();
        Minutes hands = Minutes.ZERO;
        boolean cut = false;
        for (Tick tick : ticks) {
            StageStandard standard = workshop.stageStandards().get(tick.stage());
            hands = hands.plus(tick.minutes()
                    .orElseGet(() ->
                            standard.hands(order.quantity(), order.puzzle().pieces())));
            cut |= tick.stage() == Stage.CUT;
        }
        Minutes onTheClock = progress.running().stream()
                .filter(running -> running.order().equals(id))
                .map(running -> Minutes.of(Duration.between(running.since(), clock.instant())))
                .reduce(Minutes.ZERO, Minutes::plus);
        hands = hands.plus(onTheClock);
        hands = hands.plus(progress.stoppedAt(id, noticed));
        Minutes laser = laserTime(order, cut, noticed, onTheClock, lastBeginning);
        Money material =
                report.materialLost().map(Money::rounded).orElseGet(() -> material(order, report, lastBeginning));
        if (material.isNegative()) {
            throw new Refused("bench.wrong.negative");
        }
        return new Rework(
                0,
                id,
                noticed,
                report.againFrom(),
                report.what(),
                report.note().strip(),
                report.board() != Rework.Board.KEPT,
                hands,
                laser,
                material,
                clock.instant(),
                who);
    }

    /** By the cuts on record since the last beginning; by the estimate only where the cut was ticked without a record. */
    private Minutes laserTime(Order order, boolean cut, Stage noticed, Minutes onTheClock, Instant since) {
        List<CutJob> jobs = cutJobs.of(order.id()).stream()
                .filter(job ->
                        job.started().filter(start -> start.at().isAfter(since)).isPresent())
                .toList();
        Minutes recorded = jobs.stream().flatMap(job -> job.took().stream()).reduce(Minutes.ZERO, Minutes::plus);
        if (jobs.isEmpty() && cut) {
            return order.laser();
        }
        boolean beamOn = noticed == Stage.CUT
                && jobs.stream().anyMatch(job -> job.ended().isEmpty());
        return beamOn
                ? recorded.plus(
                        Minutes.of(Math.min(onTheClock.value(), order.laser().value())))
                : recorded;
    }

    private Money material(Order order, Rework.Report report, Instant since) {
        Money lost = Money.zero(workshop.currency());
        OrderId id = order.id();
        if (report.againFrom().compareTo(Stage.STICK) <= 0) {
            lost = lost.plus(usedUp.costSince(order, since)).plus(printWithoutLedger(order, report, since));
            for (Cut cut : rack.cutsOf(id)) {
                lost = !cut.undone() && cut.at().isAfter(since) ? lost.plus(cut.blankCost()) : lost;
            }
        }
        if (report.board() == Rework.Board.BLANK_SPOILED) {
            lost = lost.plus(Money.sum(cuts.costOfBlanks(id), lost.currency()));
        } else if (report.board() == Rework.Board.WHOLE_BOARD_SPOILED) {
            for (Sheet board : rack.heldFor(id)) {
                lost = lost.plus(board.cost());
            }
        }
        return lost.rounded();
    }

    /** A print that was made but not booked from the shelf is worth what it was reckoned to cost. */
    private Money printWithoutLedger(Order order, Rework.Report report, Instant since) {
        boolean printed = report.againFrom() == Stage.PRINT
                && progress.ticks(order.id()).stream()
                        .anyMatch(tick -> !tick.undone()
                                && tick.stage() == Stage.PRINT
                                && tick.at().isAfter(since));
        Money zero = Money.zero(workshop.currency());
        Money reckoned = orders.keptPrice(order.id()).answer().costs().of(CostPart.PRINT);
        return printed
                        && !usedUp.printedSince(order, since)
                        && reckoned.currency().equals(zero.currency())
                ? reckoned
                : zero;
    }
}
