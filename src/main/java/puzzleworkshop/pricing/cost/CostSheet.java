package puzzleworkshop.pricing.cost;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.measure.Money;

/**
 * All that an order costs, as lines that open to where they come from.
 *
 * @param currency of all amounts
 * @param quantity good puzzles that leave the workshop
 * @param lines top lines; each belongs to one part of the bar
 */
public record CostSheet(Currency currency, int quantity, List<CostLine> lines) {

    public CostSheet {
        lines = List.copyOf(lines);
    }

    /** What everything costs, exact. */
    public Money total() {
        return Money.sum(lines.stream().map(CostLine::amount).toList(), currency);
    }

    /** What one puzzle of the order costs, exact. */
    public Money each() {
        return total().dividedBy(quantity);
    }

    public Money of(CostPart part) {
        return Money.sum(of(part, lines), currency);
    }

    public List<CostLine> linesOf(CostPart part) {
        return lines.stream().filter(line -> line.part() == part).toList();
    }

    public CostSheet with(List<CostLine> more) {
        List<CostLine> all = new ArrayList<>(lines);
        all.addAll(more);
        return new CostSheet(currency, quantity, all);
    }

    /**
     * The parts in payable amounts that add up to the rounded total exactly (largest remainder). Parts without cost are
     * left out.
     */
    public Map<CostPart, Money> shownParts() {
        Map<CostPart, Money> exact = new EnumMap<>(CostPart.class);
        for (CostPart part : CostPart.values()) {
            if (!of(part).isZero()) {
                exact.put(part, of(part));
            }
        }
        return LargestRemainder.addingUpTo(total().rounded(), exact);
    }

    /** The lines beneath one line in payable amounts that add up to what is shown for it. */
    public static List<Money> shownLines(Money shownTotal, List<CostLine> lines) {
        List<BigDecimal> weights =
                lines.stream().map(line -> line.amount().amount()).toList();
        return LargestRemainder.addingUpTo(shownTotal, weights);
    }

    private static List<Money> of(CostPart part, List<CostLine> lines) {
        return lines.stream()
                .filter(line -> line.part() == part)
                .map(CostLine::amount)
                .toList();
    }
}
