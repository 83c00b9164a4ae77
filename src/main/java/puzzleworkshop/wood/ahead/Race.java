package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import puzzleworkshop.wood.play.WoodState;

/**
 * Things that could be done in a period meet the same courses of the periods to come; the weaker half drops out round by round
 * while the others meet more of them (successive halving). What spends more than the least must be worth it.
 */
final class Race {

    /**
     * In a course where spending more than the least loses, the loss counts so much more than once, divided by the periods seen:
     * courses drawn from little are hardly to be trusted (losses weigh more than gains: Tversky and Kahneman, Journal of Risk
     * and Uncertainty 5, 1992; that it eases with what was seen, and how much, is our own choice, tried on open and on made
     * instances).
     */
    private static final double CAUTION = 3;

    /** What is spent beyond the least must come back with so much more, divided likewise (our own choice as well). */
    private static final double RETURN = 0.15;

    /** A course of so many periods to come, another one each time. */
    @FunctionalInterface
    interface Draws {
        Course next(int periods);
    }

    private final WoodState state;
    private final List<Thrifty> rules;
    private final int plays;
    private final int ahead;
    private final double perPeriod;
    private final double after;
    private final double unit;
    private final Draws draws;
    private final Optional<AsBefore> account;
    private final List<Course> courses = new ArrayList<>();

    /**
     * @param plays how many plays of a course the decision may cost, about
     * @param ahead periods looked ahead
     * @param account which says what going on as before costs; none: that is reckoned like everything else
     */
    Race(WoodState state, List<Thrifty> rules, int plays, int ahead, Draws draws, Optional<AsBefore> account) {
        this.state = state;
        this.rules = rules;
        this.plays = plays;
        this.ahead = ahead;
        this.draws = draws;
        this.account = account;
        perPeriod = SeenFutures.meanArea(state);
        after = perPeriod * (state.left() - ahead);
        unit = LookAhead.unit(state);
    }

    private final class Runner {
        private final Candidates.Candidate candidate;
        private final boolean asBefore;
        private final double[] paid = new double[rules.size()];
        private double[][] each = new double[0][];
        private double[] inAll = new double[0];

        Runner(Candidates.Candidate candidate) {
            this.candidate = candidate;
            asBefore = account.isPresent() && account.get().is(state.paid() + cost(), candidate.after());
        }

        long cost() {
            return candidate.purchase().cost();
        }

        /** What each of the rules pays in the courses up to so many. */
        void meet(int courses, IntFunction<double[]> play) {
            int from = each.length;
            each = Arrays.copyOf(each, courses);
            for (int c = from; c < courses; c++) {
                each[c] = play.apply(c);
                for (int r = 0; r < paid.length; r++) {
                    paid[r] += each[c][r];
                }
            }
            inAll = inAll();
        }

        private double[] inAll() {
            int rule = IntStream.range(0, paid.length)
                    .boxed()
                    .min(Comparator.comparingDouble(r -> paid[r]))
                    .orElseThrow();
            double[] own = Arrays.stream(each)
                    .mapToDouble(byRule -> state.paid() + cost() + byRule[rule])
                    .toArray();
            if (!asBefore) {
                return own;
            }
            double[] gone = account.orElseThrow().totals(own.length);
            return Arrays.stream(gone).sum() < Arrays.stream(own).sum() ? gone : own;
        }

        double mean() {
            return Arrays.stream(inAll).average().orElse(0);
        }
    }

    /** @param usual what is done when the others are not clearly better; none: the best of those that spend least now */
    Candidates.Candidate best(List<Candidates.Candidate> candidates, Optional<Candidates.Candidate> usual) {
        List<Runner> runners =
                new ArrayList<>(candidates.stream().map(Runner::new).toList());
        if (runners.size() == 1) {
            return candidates.getFirst();
        }
        long least = runners.stream().mapToLong(Runner::cost).min().orElseThrow();
        int rounds = 32 - Integer.numberOfLeadingZeros(runners.size() - 1);
        int share = plays / rounds / 2;
        int met = 0;
        while (true) {
            met += Math.max(2, share / (runners.size() * rules.size()));
            while (courses.size() < met) {
                Course course = draws.next(ahead);
                courses.add(course);
                account.ifPresent(one -> one.meet(course));
            }
            for (Runner runner : runners) {
                runner.meet(met, c -> played(runner.candidate, c));
            }
            runners.sort(Comparator.comparingDouble(Runner::mean).thenComparingLong(Runner::cost));
            Runner safe = safe(runners, least, usual);
            if (runners.size() <= 3) {
                return worthIt(runners.getFirst(), safe);
            }
            runners = new ArrayList<>(runners.subList(0, (runners.size() + 1) / 2));
            if (!runners.contains(safe)) {
                runners.add(safe);
            }
        }
    }

    private static Runner safe(List<Runner> sorted, long least, Optional<Candidates.Candidate> usual) {
        return sorted.stream()
                .filter(runner -> usual.map(one -> one == runner.candidate).orElse(runner.cost() == least))
                .findFirst()
                .orElseThrow();
    }

    private double[] played(Candidates.Candidate candidate, int course) {
        return rules.stream()
                .mapToDouble(rule ->
                        courses.get(course).play(candidate.after(), rule, perPeriod, after, unit, state.turning()))
                .toArray();
    }

    /** What is spent now beyond the least must come back on the whole, courses in which it does not counting more. */
    private Candidates.Candidate worthIt(Runner best, Runner cheapest) {
        int seen = state.past().size() + 1;
        double won = 0;
        for (int c = 0; c < best.inAll.length; c++) {
            double here = cheapest.inAll[c] - best.inAll[c];
            won += here < 0 ? (1 + CAUTION / seen) * here : here;
        }
        long more = best.cost() - cheapest.cost();
        return won < RETURN / seen * more * best.inAll.length ? cheapest.candidate : best.candidate;
    }
}
