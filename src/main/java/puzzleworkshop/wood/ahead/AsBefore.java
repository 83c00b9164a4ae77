package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodPeriod;
import puzzleworkshop.wood.play.WoodPlay;
import puzzleworkshop.wood.play.WoodPolicy;
import puzzleworkshop.wood.play.WoodState;

/**
 * A shadow account: what the rule before would have paid in all periods up to this one, this one included, and what it would go
 * on to pay in each of the courses drawn. Where a candidate leaves everything as that rule would have it, the account says what
 * it costs to go on without looking ahead; a better one must beat that, not only what quick rules make of the same boards.
 * (Rules weighed by their accounts on the same past: Blum and Burch, On-line learning and the metrical task system problem,
 * Machine Learning 39, 2000.)
 */
final class AsBefore {

    private final WoodPlay.Result now;
    private final boolean turning;
    private final List<Double> totals = new ArrayList<>();

    AsBefore(WoodState state, WoodPolicy rule) {
        turning = state.turning();
        List<WoodPeriod> seen = new ArrayList<>(state.past());
        seen.add(state.now());
        now = WoodPlay.play(new WoodCase("as before", turning, state.room(), state.usual(), seen), rule);
    }

    /**
     * Follows one more course. The rule itself would take most of the time there is, so it is played on as by hand, which costs
     * as much on the mean.
     */
    void meet(Course course) {
        totals.add(now.cost() + course.byHand(now.rack(), turning));
    }

    /** Whether somebody who has paid this and has these boards stands exactly where the account does. */
    boolean is(long paid, List<OpenBoard> rack) {
        List<OpenBoard> left =
                rack.stream().filter(board -> board.freeArea() > 0).toList();
        boolean same = paid == now.cost() && left.size() == now.rack().size();
        for (int i = 0; same && i < left.size(); i++) {
            same = left.get(i).hasSameLeft(now.rack().get(i));
        }
        return same;
    }

    /** What it pays in the first courses, with all that was paid before. */
    double[] totals(int courses) {
        return totals.stream().limit(courses).mapToDouble(total -> total).toArray();
    }
}
