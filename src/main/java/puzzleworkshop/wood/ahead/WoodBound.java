package puzzleworkshop.wood.ahead;

import java.util.Arrays;
import java.util.List;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodPeriod;

/**
 * No way of buying costs less: up to the end of each period the boards bought must have at least the area of the blanks asked
 * for by then. The cheapest such choice is found exactly by dynamic programming over the area bought (a knapsack with a
 * demand for each period); shapes are left out, so it is a lower bound.
 */
public final class WoodBound {

    private WoodBound() {}

    public static long leastCost(WoodCase woodCase) {
        List<WoodPeriod> periods = woodCase.periods();
        long all = periods.stream().mapToLong(WoodPeriod::wantedArea).sum();
        long cell = Math.max(1, (all + 199_999) / 200_000);
        int top = (int) (all / cell);
        long[] least = new long[top + 1];
        Arrays.fill(least, Long.MAX_VALUE);
        least[0] = 0;
        long asked = 0;
        for (WoodPeriod period : periods) {
            for (ForSale offer : period.offers()) {
                int size = (int) Math.min(top, (offer.area() + cell - 1) / cell);
                for (int a = top; a >= 0; a--) {
                    if (least[a] < Long.MAX_VALUE) {
                        int to = Math.min(top, a + size);
                        least[to] = Math.min(least[to], least[a] + offer.cost());
                    }
                }
            }
            asked += period.wantedArea();
            Arrays.fill(least, 0, (int) Math.min(top, asked / cell), Long.MAX_VALUE);
        }
        return Arrays.stream(least).min().orElse(0);
    }
}
