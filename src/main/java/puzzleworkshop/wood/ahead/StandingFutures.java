package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import puzzleworkshop.wood.play.Futures;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodPeriod;
import puzzleworkshop.wood.play.WoodState;

/**
 * For a workshop whose dealers always offer the same boards: a week to come is like one of those seen (drawn with
 * replacement: bootstrap, Efron 1979), later ones likelier, its blanks drawn one by one from what was seen and, as long as
 * little was seen, from the usual sizes.
 */
public final class StandingFutures implements Futures {

    /** Each usual size counts as so many blanks seen. */
    private static final double USUAL_WEIGHT = 2;

    /** So many weeks back, what was seen counts half. */
    private static final double HALF_LIFE = 13;

    @Override
    public List<WoodPeriod> draw(WoodState state, int periods, RandomGenerator random) {
        List<WoodPeriod> seen = new ArrayList<>(state.past());
        seen.add(state.now());
        double[] weight = new double[seen.size()];
        double all = 0;
        double blanks = 0;
        for (int t = 0; t < weight.length; t++) {
            weight[t] = Math.pow(0.5, (weight.length - 1 - t) / HALF_LIFE);
            all += weight[t];
            blanks += weight[t] * seen.get(t).blanks().size();
        }
        double usual = USUAL_WEIGHT * state.usual().size();
        List<WoodPeriod> course = new ArrayList<>(periods);
        for (int t = 0; t < periods; t++) {
            int count = seen.get(drawn(weight, all, random)).blanks().size();
            List<Wanted> drawn = new ArrayList<>(count);
            for (int i = 0; i < count; i++) {
                List<Wanted> week = seen.get(drawn(weight, all, random)).blanks();
                boolean fromUsual = random.nextDouble() * (usual + blanks) < usual || week.isEmpty();
                if (fromUsual && state.usual().isEmpty()) {
                    continue;
                }
                List<Wanted> from = fromUsual ? state.usual() : week;
                drawn.add(from.get(random.nextInt(from.size())));
            }
            course.add(new WoodPeriod(state.now().offers(), drawn));
        }
        return course;
    }

    private static int drawn(double[] weight, double all, RandomGenerator random) {
        double at = random.nextDouble() * all;
        for (int t = 0; t < weight.length - 1; t++) {
            at -= weight[t];
            if (at < 0) {
                return t;
            }
        }
        return weight.length - 1;
    }
}
