package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.wood.ahead.buying.BlankOrder;
import puzzleworkshop.wood.ahead.buying.Purchases;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodPeriod;

/** Periods to come, prepared once so that many plays go through them quickly. */
final class Course {

    /** One period: blanks with their order, ways to buy. */
    record Step(
            List<Wanted> blanks, long wantedArea, int[] order, int[] otherOrder, Purchases purchases, long dearest) {}

    private static final Comparator<OpenBoard> LARGEST_FIRST = Comparator.comparingLong(OpenBoard::freeArea)
            .thenComparing(OpenBoard::number)
            .reversed();

    private final List<Step> steps = new ArrayList<>();

    Course(List<WoodPeriod> periods, long dearestSeen) {
        Purchases last = null;
        for (WoodPeriod period : periods) {
            if (last == null || !last.offers().equals(period.offers())) {
                last = new Purchases(period.offers());
            }
            long dearest =
                    period.offers().stream().mapToLong(ForSale::cost).max().orElse(dearestSeen);
            steps.add(new Step(
                    period.blanks(),
                    period.wantedArea(),
                    BlankOrder.AREA.of(period.blanks()),
                    BlankOrder.LONGER_SIDE.of(period.blanks()),
                    last,
                    Math.max(dearest, dearestSeen)));
        }
    }

    /** @param perPeriod area expected in each period, by which a play judges what comes after */
    double play(List<OpenBoard> start, Thrifty rule, double perPeriod, double after, double unit, boolean turning) {
        return play(Laying.copy(start), rule, perPeriod, after, unit, turning, 0);
    }

    /**
     * What is paid without looking ahead: in each period the cheapest boards that hold its blanks, as {@link ShortSighted} does,
     * with two orders of blanks only.
     */
    double byHand(List<OpenBoard> start, boolean turning) {
        List<OpenBoard> rack = start;
        double paid = 0;
        for (Step step : steps) {
            Cheapest cheapest = cheapest(step, rack, turning);
            paid += cheapest.paid();
            rack = cheapest.after();
        }
        return paid;
    }

    private record Cheapest(double paid, List<OpenBoard> after) {}

    private static Cheapest cheapest(Step step, List<OpenBoard> rack, boolean turning) {
        long free = rack.stream().mapToLong(OpenBoard::freeArea).sum();
        for (Purchases.Purchase way : step.purchases().ways()) {
            if (free + way.area() < step.wantedArea()) {
                continue;
            }
            for (int[] order : List.of(step.order(), step.otherOrder())) {
                List<OpenBoard> boards = with(rack, way, step);
                if (Laying.lay(boards, step.blanks(), order, PlaceRule.SMALLEST_REST, turning, null) != null) {
                    return new Cheapest(way.cost(), boards);
                }
            }
        }
        Purchases.Purchase most = step.purchases().ways().getLast();
        List<OpenBoard> boards = with(rack, most, step);
        List<Integer> without = new ArrayList<>();
        Laying.lay(boards, step.blanks(), step.order(), PlaceRule.SMALLEST_REST, turning, without);
        return new Cheapest(most.cost() + without.size() * Math.max(step.dearest(), 1), boards);
    }

    private static List<OpenBoard> with(List<OpenBoard> rack, Purchases.Purchase way, Step step) {
        List<OpenBoard> boards = Laying.copy(rack);
        boards.addAll(way.boards(step.purchases().offers(), 0));
        return boards;
    }

    /**
     * @param rack cut into; after it, as the course leaves it
     * @param room how many boards it holds at the end of a period, the largest stay; 0: any number
     */
    double play(
            List<OpenBoard> rack,
            Thrifty rule,
            double perPeriod,
            double after,
            double unit,
            boolean turning,
            int room) {
        double paid = 0;
        for (int t = 0; t < steps.size(); t++) {
            double later = perPeriod * (steps.size() - t - 1) + after;
            paid += rule.run(rack, steps.get(t), later, unit, turning);
            if (rack.size() > 3) {
                rack.removeIf(board -> board.freeArea() == 0);
            }
            if (room > 0 && rack.size() > room) {
                rack.sort(LARGEST_FIRST);
                rack.subList(room, rack.size()).clear();
            }
        }
        if (after > 0) {
            double left = rack.stream().mapToLong(OpenBoard::freeArea).sum();
            paid -= unit * Math.min(0.8 * left, after);
        }
        return paid;
    }
}
