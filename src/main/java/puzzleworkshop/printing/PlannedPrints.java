package puzzleworkshop.printing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;

/** What the week's plan wants to know about printing: which orders go together, and what they take from the shelf. */
@Service
public class PlannedPrints {

    /** Prints were planned, printed, spoiled or taken out of a run. */
    public record PrintsMoved() implements Change {}

    /** Sheet that is left over beside the stickers, for prints that are in no run yet (common practice). */
    private static final double WASTE = 1.15;

    private final GangRuns gang;
    private final RunStore runs;
    private final PrintMedia media;
    private final PaperUse paper;

    PlannedPrints(GangRuns gang, RunStore runs, PrintMedia media, Supplies supplies) {
        this.gang = gang;
        this.runs = runs;
        this.media = media;
        this.paper = new PaperUse(supplies);
    }

    /**
     * An order in a run.
     *
     * @param printed whether its print has come out of it; else it is planned
     */
    public record InRun(OrderId order, long run, boolean printed) {}

    /**
     * The run that a print is still to come out of.
     *
     * @param confirmed whether it is to be printed as it is; else it is laid out and may be changed
     */
    public record OpenRun(long run, boolean confirmed) {}

    /**
     * What prints take that go together.
     *
     * @param quantity in use units of the supply
     */
    public record Need(Set<OrderId> orders, SupplyItem item, BigDecimal quantity) {

        public Need {
            orders = Set.copyOf(orders);
        }
    }

    /** The newest run of those of the orders that have one, planned and printed told apart. */
    public List<InRun> inRuns(Collection<OrderId> orders) {
        return orders.isEmpty() ? List.of() : runs.inRuns(orders);
    }

    /** The run that those of the orders lie in whose prints are still to come out of it. */
    public Map<OrderId, OpenRun> openRuns(Collection<OrderId> orders) {
        return orders.isEmpty() ? Map.of() : runs.openRuns(orders);
    }

    /** How many copies of an order came out of runs and were good, those left out that were planned again since. */
    public int printedCopies(OrderId order) {
        return runs.printedCopies(order);
    }

    /** Sticker paper and laminate of all prints still to be made: open runs first, then what waits, first due first. */
    @Transactional(readOnly = true)
    public List<Need> needs() {
        List<Need> needs = new ArrayList<>();
        for (PrintRun run : gang.open()) {
            Set<OrderId> orders =
                    run.planned().stream().map(item -> item.order().id()).collect(Collectors.toSet());
            for (SupplyItem item : paper.of(run.medium())) {
                needs.add(new Need(
                        orders, item, PaperUse.quantity(item, run.paper().mm2(), run.sheets())));
            }
        }
        List<PrintMedium> known = media.all();
        if (known.isEmpty()) {
            return needs;
        }
        Map<OrderId, List<Copy>> waiting = gang.waiting().stream()
                .collect(Collectors.groupingBy(
                        copy -> copy.item().order().id(), LinkedHashMap::new, Collectors.toList()));
        waiting.forEach((order, copies) -> {
            double area = copies.stream()
                            .mapToDouble(copy -> copy.item().sticker().area().mm2())
                            .sum()
                    * WASTE;
            for (SupplyItem item : paper.of(known.getFirst())) {
                needs.add(new Need(Set.of(order), item, PaperUse.quantity(item, area, copies.size())));
            }
        });
        return needs;
    }
}
