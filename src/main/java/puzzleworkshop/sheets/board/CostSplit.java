package puzzleworkshop.sheets.board;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;

/**
 * The cost of a sheet divided by a cut, to the minor unit of the currency: blank, each offcut, and what is scrapped
 * (useless parts and the cut itself). They always add up to what the sheet carried.
 */
public record CostSplit(Money blank, List<Money> offcuts, Money scrapped) {

    /**
     * Every part weighs its area; of an offcut's weight the rule leaves it a share, the rest is the blank's.
     *
     * @param cost what the sheet carries, payable (no fractions of the minor unit)
     */
    public static CostSplit of(Money cost, Area blank, List<Area> offcuts, Area scrap, OffcutCost rule, Percent share) {
        double kept = switch (rule) {
            case FULL -> 1;
            case SHARE -> share.asDouble();
            case NOTHING -> 0;
        };
        double blankWeight = blank.mm2();
        List<BigDecimal> weights = new ArrayList<>();
        for (Area offcut : offcuts) {
            weights.add(BigDecimal.valueOf(offcut.mm2() * kept));
            blankWeight += offcut.mm2() * (1 - kept);
        }
        weights.addFirst(BigDecimal.valueOf(blankWeight));
        weights.add(BigDecimal.valueOf(scrap.mm2()));
        List<Money> parts = cost.allocate(weights);
        return new CostSplit(parts.getFirst(), parts.subList(1, parts.size() - 1), parts.getLast());
    }

    /** The same for a blank cut from a board, of which these parts remain. */
    public static CostSplit after(Money cost, Outline board, Size blank, List<Outline> kept, RackRules rules) {
        List<Area> areas = kept.stream().map(Outline::area).toList();
        double scrap = board.area().mm2()
                - blank.area().mm2()
                - areas.stream().mapToDouble(Area::mm2).sum();
        return of(cost, blank.area(), areas, Area.mm2(Math.max(0, scrap)), rules.offcutCost(), rules.share());
    }

    /** The same when all that is no scrap remains. */
    public static CostSplit after(Money cost, Outline board, Size blank, Remainder rest, RackRules rules) {
        List<Outline> kept = rest.parts().stream()
                .filter(part -> !part.isScrap())
                .map(Remainder.Part::outline)
                .toList();
        return after(cost, board, blank, kept, rules);
    }
}
