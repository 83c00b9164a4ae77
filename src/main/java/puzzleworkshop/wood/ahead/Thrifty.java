package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.wood.ahead.buying.Purchases;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;

/**
 * A quick rule that looks ahead in averages only: of the ways to buy it takes the one for which the price, less what the
 * wood left over is good for, is least. Wood left over is good for what will be asked for, and no more. It plays the
 * weeks to come in a rollout.
 *
 * @param thrift what a unit of area left is credited with, as a share of its price; 0: short-sighted
 * @param rule where blanks lie
 */
record Thrifty(double thrift, PlaceRule rule) {

    /** Of the area left over so much is really cut into blanks before it is too small; common practice. */
    private static final double USABLE = 0.85;

    private static final PlaceRule[] OTHERS = {PlaceRule.SHORT_SIDE, PlaceRule.CORNER};

    /** Before something is bought, two more ways to lay the blanks are tried, as at a bench; the rack is as before when none fits. */
    private static boolean fitsOtherwise(
            List<OpenBoard> before, List<OpenBoard> rack, Course.Step step, boolean turning) {
        for (PlaceRule other : OTHERS) {
            List<OpenBoard> tried = Laying.copy(before);
            if (Laying.lay(tried, step.blanks(), step.otherOrder(), other, turning, null) != null) {
                for (int i = 0; i < tried.size(); i++) {
                    rack.get(i).become(tried.get(i));
                }
                return true;
            }
        }
        return false;
    }

    /**
     * Carries a period out on the rack.
     *
     * @param toCome area still to be asked for later
     * @param unit price of a unit of area
     * @return what was paid; blanks without a board cost as much as the dearest board on offer
     */
    long run(List<OpenBoard> rack, Course.Step step, double toCome, double unit, boolean turning) {
        List<Wanted> blanks = step.blanks();
        boolean mayFit = rack.stream().mapToLong(OpenBoard::freeArea).sum() >= step.wantedArea();
        List<OpenBoard> before = mayFit ? Laying.copy(rack) : List.of();
        List<Integer> without = new ArrayList<>();
        Laying.lay(rack, blanks, step.order(), rule, turning, without);
        if (without.isEmpty()) {
            return 0;
        }
        if (mayFit && fitsOtherwise(before, rack, step, turning)) {
            return 0;
        }
        int[] order = without.stream().mapToInt(Integer::intValue).toArray();
        long need =
                without.stream().mapToLong(blank -> blanks.get(blank).area()).sum();
        long left = rack.stream().mapToLong(OpenBoard::freeArea).sum();
        List<Purchases.Purchase> ways = step.purchases().ways();
        double[] cost = new double[ways.size()];
        for (int i = 0; i < cost.length; i++) {
            Purchases.Purchase way = ways.get(i);
            double spare = left + way.area() - need;
            cost[i] = way.area() < need
                    ? Double.POSITIVE_INFINITY
                    : way.cost() - thrift * unit * Math.min(USABLE * spare, toCome);
        }
        while (true) {
            int best = -1;
            for (int i = 0; i < cost.length; i++) {
                if (cost[i] < Double.POSITIVE_INFINITY && (best < 0 || cost[i] < cost[best])) {
                    best = i;
                }
            }
            if (best < 0) {
                return without.size() * Math.max(step.dearest(), 1);
            }
            List<OpenBoard> fresh = ways.get(best).boards(step.purchases().offers(), 0);
            if (Laying.lay(fresh, blanks, order, rule, turning, null) != null) {
                rack.addAll(fresh);
                return ways.get(best).cost();
            }
            cost[best] = Double.POSITIVE_INFINITY;
        }
    }
}
