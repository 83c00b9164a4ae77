package puzzleworkshop.placing;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.cutfiles.writing.CutHeat;
import puzzleworkshop.cutfiles.writing.CutPace;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.printing.crosses.Crosses;
import puzzleworkshop.printing.crosses.PrintedCrosses;
import puzzleworkshop.printing.crosses.PrintedSticker;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** What a cut's print looks like as it was printed: its marks, its overhang, and the lines cut from it. */
@Component
class PrintsUnderLaser {

    private static final int MOST_PACES = 500;

    private final Orders orders;
    private final PatternCache patterns;
    private final PrintedCrosses crosses;
    private final Workshop workshop;
    /** Asked for with every look at an order: how warm its board gets depends on it. */
    private final VersionedCache<Lines, CutPace> paces =
            VersionedCache.<Lines, CutPace>ofMost(MOST_PACES).restingOnTheQuestion();

    private record Lines(PatternSpec pattern, Machine machine, CutParameters parameters, Length thickness) {}

    PrintsUnderLaser(Orders orders, PatternCache patterns, PrintedCrosses crosses, Workshop workshop) {
        this.orders = orders;
        this.patterns = patterns;
        this.crosses = crosses;
        this.workshop = workshop;
    }

    TradeNumbers numbers() {
        return workshop.tradeNumbers();
    }

    Optional<Order> orderOf(CutJob job) {
        return job.order().flatMap(orders::find);
    }

    /** How many boards of one puzzle each the cut has. */
    int copies(CutJob job) {
        return orderOf(job).map(Order::quantity).orElse(1);
    }

    /** None for a test cut; without marks where the print carries none that belong to what is cut. */
    Optional<DrawnPrint> of(CutJob job) {
        return orderOf(job)
                .map(order -> printOf(order, pace(order, job.setting().machine(), job.parameters())));
    }

    DrawnPrint printOf(Order order, CutPace pace) {
        return drawn(order, pace, crosses.stickerOf(order.id()));
    }

    /** How fast an order's lines are cut with a setting; heat has to pass in that time. */
    CutPace pace(Order order, Machine machine, CutParameters parameters) {
        PatternSpec pattern = order.puzzle().pattern();
        Length thickness = order.board().thickness();
        return paces.get(
                new Lines(pattern, machine, parameters, thickness),
                () -> CutTime.pace(patterns.of(pattern).lines(), machine, parameters, thickness));
    }

    /** How warm the board is where the beam arrives, lines cut as {@link #planOf} says. */
    CutHeat heatOf(Order order, CutPace pace) {
        return patterns.heat(order.puzzle().pattern(), sequence(), pace);
    }

    private CutPlan.Sequence sequence() {
        return workshop.tradeNumbers().outlineLast() ? CutPlan.Sequence.INNER_FIRST : CutPlan.Sequence.OUTLINE_FIRST;
    }

    /** What is cut of an order's puzzle at this pace, in order, under the order's number. */
    CutPlan planOf(Order order, CutPace pace) {
        CutPlan.Sequence sequence = sequence();
        CutPlan plan = patterns.plan(order.puzzle().pattern(), sequence, pace);
        return new CutPlan(
                order.number(), sequence, plan.inner(), plan.outline(), plan.travelMm(), plan.travelAsDrawnMm());
    }

    private DrawnPrint drawn(Order order, CutPace pace, Optional<PrintedSticker> printed) {
        TradeNumbers numbers = workshop.tradeNumbers();
        CutPlan named = planOf(order, pace);
        // a print of another size is not the one that lies there
        Optional<PrintedSticker> own = printed.filter(
                sticker -> sticker.finished().equals(order.puzzle().finished()));
        List<Point> marks = own.flatMap(PrintedSticker::crosses)
                .map((Crosses set) -> set.on(order.puzzle().finished()))
                .orElse(List.of());
        return new DrawnPrint(
                order.puzzle().finished(), own.map(PrintedSticker::overhang).orElse(numbers.overhang()), marks, named);
    }
}
