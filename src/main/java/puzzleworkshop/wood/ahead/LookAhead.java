package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Futures;
import puzzleworkshop.wood.play.WoodDecision;
import puzzleworkshop.wood.play.WoodPeriod;
import puzzleworkshop.wood.play.WoodPolicy;
import puzzleworkshop.wood.play.WoodState;

/**
 * Looks ahead: each thing that could be done now is followed through many courses of the periods to come, played on by quick
 * rules, and the one that costs least on average is done (rollout: Bertsekas, Tsitsiklis and Wu, Journal of Heuristics 3,
 * 1997; several rules at once: Chang, Givan and Chong, Discrete Event Dynamic Systems 14, 2004). All candidates meet the same
 * courses. The weaker half drops out round by round while the others meet more of them (successive halving).
 *
 * <p>Work is bounded by counts, not by the clock, and every draw comes from the seed and the number of the period: the same
 * state gets the same decision.
 */
public final class LookAhead implements WoodPolicy {

    /**
     * In a course where spending more than the least loses, the loss counts so much more than once, divided by the periods seen:
     * courses drawn from little are hardly to be trusted (losses weigh more than gains: Tversky and Kahneman, Journal of Risk
     * and Uncertainty 5, 1992; that it eases with what was seen, and how much, is our own choice, tried on open and on made
     * instances).
     */
    private static final double CAUTION = 3;

    /** What is spent beyond the least must come back with so much more, divided likewise (our own choice as well). */
    private static final double RETURN = 0.15;

    private final Futures futures;
    private final long seed;
    private final int horizon;
    private final int plays;
    private final List<Thrifty> rules;
    private final WoodPolicy base;

    /**
     * @param horizon periods looked ahead at most
     * @param base what would be done without looking ahead; one of the things followed
     * @param plays how many plays of a course a decision may cost, about
     */
    LookAhead(Futures futures, long seed, int horizon, int plays, List<Thrifty> rules, WoodPolicy base) {
        this.base = base;
        this.futures = futures;
        this.seed = seed;
        this.horizon = horizon;
        this.plays = plays;
        this.rules = rules;
    }

    private static final class Runner {
        private final Candidates.Candidate candidate;
        private final double[] paid;
        private double[][] each = new double[0][];

        Runner(Candidates.Candidate candidate, int rules) {
            this.candidate = candidate;
            this.paid = new double[rules];
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
        }

        int bestRule() {
            return IntStream.range(0, paid.length)
                    .boxed()
                    .min(Comparator.comparingDouble(r -> paid[r]))
                    .orElseThrow();
        }

        double mean() {
            return candidate.purchase().cost() + paid[bestRule()] / Math.max(each.length, 1);
        }

        double[] all() {
            int rule = bestRule();
            return Arrays.stream(each)
                    .mapToDouble(rules -> candidate.purchase().cost() + rules[rule])
                    .toArray();
        }
    }

    @Override
    public WoodDecision decide(WoodState state) {
        Optional<Candidates.Candidate> usually = Candidates.of(state, base.decide(state));
        List<Candidates.Candidate> ways = new ArrayList<>(Candidates.ways(state, 16, 2));
        usually.ifPresent(ways::add);
        if (ways.isEmpty()) {
            return ShortSighted.nearest().decide(state);
        }
        if (state.left() == 0) {
            return decision(ways.stream()
                    .min(Comparator.comparingLong(way -> way.purchase().cost()))
                    .orElseThrow());
        }
        Race race = new Race(state);
        Candidates.Candidate way = race.best(ways, Optional.empty());
        List<Candidates.Candidate> layings = new ArrayList<>(Candidates.layings(state, way.purchase(), 20));
        layings.add(way);
        Optional<Candidates.Candidate> likeIt = usually.filter(
                other -> other.purchase().offers().equals(way.purchase().offers()));
        likeIt.ifPresent(layings::add);
        return decision(race.best(layings, likeIt));
    }

    private final class Race {

        private final WoodState state;
        private final int ahead;
        private final double perPeriod;
        private final double after;
        private final double unit;
        private final long dearest;
        private final List<Course> courses = new ArrayList<>();
        private final SplittableRandom random;

        Race(WoodState state) {
            this.state = state;
            ahead = Math.min(state.left(), horizon);
            perPeriod = SeenFutures.meanArea(state);
            after = perPeriod * (state.left() - ahead);
            unit = unit(state);
            dearest = dearest(state);
            random = new SplittableRandom(seed * 1_000_003 + state.past().size());
        }

        /** @param usual what is done when the others are not clearly better; none: the best of those that spend least now */
        Candidates.Candidate best(List<Candidates.Candidate> candidates, Optional<Candidates.Candidate> usual) {
            List<Runner> runners = new ArrayList<>(candidates.stream()
                    .map(one -> new Runner(one, rules.size()))
                    .toList());
            if (runners.size() == 1) {
                return candidates.getFirst();
            }
            long least = runners.stream()
                    .mapToLong(runner -> runner.candidate.purchase().cost())
                    .min()
                    .orElseThrow();
            int rounds = 32 - Integer.numberOfLeadingZeros(runners.size() - 1);
            int share = plays / rounds / 2;
            int met = 0;
            while (true) {
                met += Math.max(2, share / (runners.size() * rules.size()));
                int to = met;
                while (courses.size() < to) {
                    courses.add(new Course(futures.draw(state, ahead, random.split()), dearest));
                }
                runners.parallelStream().forEach(runner -> runner.meet(to, c -> played(runner.candidate, c)));
                runners.sort(Comparator.comparingDouble(Runner::mean)
                        .thenComparingLong(runner -> runner.candidate.purchase().cost()));
                if (runners.size() <= 3) {
                    return worthIt(runners.getFirst(), safe(runners, least, usual));
                }
                Runner cheapest = safe(runners, least, usual);
                runners = new ArrayList<>(runners.subList(0, (runners.size() + 1) / 2));
                if (!runners.contains(cheapest)) {
                    runners.add(cheapest);
                }
            }
        }

        private static Runner safe(List<Runner> sorted, long least, Optional<Candidates.Candidate> usual) {
            return sorted.stream()
                    .filter(runner -> usual.map(one -> one == runner.candidate)
                            .orElse(runner.candidate.purchase().cost() == least))
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
            double[] with = best.all();
            double[] without = cheapest.all();
            double won = 0;
            for (int c = 0; c < with.length; c++) {
                double here = without[c] - with[c];
                won += here < 0 ? (1 + CAUTION / seen) * here : here;
            }
            long more = best.candidate.purchase().cost()
                    - cheapest.candidate.purchase().cost();
            return won < RETURN / seen * more * with.length ? cheapest.candidate : best.candidate;
        }
    }

    private static WoodDecision decision(Candidates.Candidate chosen) {
        return new WoodDecision(chosen.purchase().offers(), chosen.cuts(), List.of());
    }

    static double unit(WoodState state) {
        double cost = 0;
        double area = 0;
        for (int t = 0; t <= state.past().size(); t++) {
            WoodPeriod period = t < state.past().size() ? state.past().get(t) : state.now();
            for (ForSale offer : period.offers()) {
                cost += offer.cost();
                area += offer.area();
            }
        }
        return area == 0 ? 1 : cost / area;
    }

    static long dearest(WoodState state) {
        return IntStream.rangeClosed(0, state.past().size())
                .mapToObj(t -> t < state.past().size() ? state.past().get(t) : state.now())
                .flatMap(period -> period.offers().stream())
                .mapToLong(ForSale::cost)
                .max()
                .orElse(0);
    }
}
