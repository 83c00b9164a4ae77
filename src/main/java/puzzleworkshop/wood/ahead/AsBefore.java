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
 * on to pay in each of the courses drawn. Whoever thinks ahead may risk what that has saved against it, and hardly more: what a
 * course costs beyond the account counts several times. (Rules weighed by their accounts on the same past: Blum and Burch,
 * On-line learning and the metrical task system problem, Machine Learning 39, 2000; how much it counts is our own choice, tried
 * on made instances.)
 */
final class AsBefore {

    /** So much dearer than the account is not yet a loss. */
    private static final double ALLOWED = 0.02;

    /** What is lost beyond that counts so many times more. */
    private static final double WEIGHT = 4;

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

    /** What was paid in all in each course, with losses against the account counted as said above. */
    double[] weighed(double[] paid) {
        double[] weighed = paid.clone();
        for (int c = 0; c < weighed.length; c++) {
            weighed[c] += WEIGHT * Math.max(0, paid[c] - (1 + ALLOWED) * totals.get(c));
        }
        return weighed;
    }
}
