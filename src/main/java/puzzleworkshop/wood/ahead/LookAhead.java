package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
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
 * 1997; several rules at once: Chang, Givan and Chong, Discrete Event Dynamic Systems 14, 2004), in a {@link Race}.
 *
 * <p>Work is bounded by counts, not by the clock, and every draw comes from the seed and the number of the period: the same
 * state gets the same decision.
 */
public final class LookAhead implements WoodPolicy {

    private final Futures futures;
    private final long seed;
    private final int horizon;
    private final int plays;
    private final List<Thrifty> rules;
    private final WoodPolicy base;
    private final boolean accounted;

    /**
     * @param horizon periods looked ahead at most
     * @param base what would be done without looking ahead; one of the things followed
     * @param plays how many plays of a course a decision may cost, about
     * @param accounted whether an account of the base is kept beside ({@link AsBefore}); where not, blanks lie as it lays them
     *     unless another place is clearly better
     */
    LookAhead(
            Futures futures,
            long seed,
            int horizon,
            int plays,
            List<Thrifty> rules,
            WoodPolicy base,
            boolean accounted) {
        this.accounted = accounted;
        this.base = base;
        this.futures = futures;
        this.seed = seed;
        this.horizon = horizon;
        this.plays = plays;
        this.rules = rules;
    }

    @Override
    public WoodDecision decide(WoodState state) {
        Optional<Candidates.Candidate> usually = Candidates.of(state, base.decide(state));
        List<Candidates.Candidate> ways = new ArrayList<>(Candidates.ways(state, 16, 2));
        usually.ifPresent(ways::add);
        if (ways.isEmpty()) {
            return base.decide(state);
        }
        if (state.left() == 0) {
            return decision(ways.stream()
                    .min(Comparator.comparingLong(way -> way.purchase().cost()))
                    .orElseThrow());
        }
        Race race = race(state);
        Candidates.Candidate way = race.best(ways, Optional.empty());
        List<Candidates.Candidate> layings = new ArrayList<>(Candidates.layings(state, way.purchase(), 20));
        layings.add(way);
        Optional<Candidates.Candidate> likeIt = usually.filter(
                other -> other.purchase().offers().equals(way.purchase().offers()));
        likeIt.ifPresent(layings::add);
        return decision(race.best(layings, accounted ? Optional.empty() : likeIt));
    }

    private Race race(WoodState state) {
        long dearest = dearest(state);
        SplittableRandom random =
                new SplittableRandom(seed * 1_000_003 + state.past().size());
        return new Race(
                state,
                rules,
                plays,
                Math.min(state.left(), horizon),
                periods -> new Course(futures.draw(state, periods, random.split()), dearest),
                accounted ? Optional.of(new AsBefore(state, base)) : Optional.empty());
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
