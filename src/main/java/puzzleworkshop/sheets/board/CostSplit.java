package puzzleworkshop.sheets.board;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;

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
}
