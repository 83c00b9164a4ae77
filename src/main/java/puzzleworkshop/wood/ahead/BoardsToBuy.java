package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;

/**
 * Which boards to order so that the weeks until the order after that can come are served: the cheapest order with which the
 * share of drawn courses in which every blank has a board reaches the service level (sample average approximation of a
 * chance constraint: Luedtke and Ahmed, SIAM Journal on Optimization 19, 2008). Seeded: the same question, the same order.
 *
 * <p>What is ordered comes after its dealer's weeks and serves until what the slowest of them brings a week later. Blanks that no
 * board in the rack holds before the first delivery wait for it; after that none may stand without a board.
 */
public final class BoardsToBuy {

    private static final int COURSES = 100;
    private static final int MOST_OF_EACH = 6;

    /** The rack alone is looked at so far ahead. */
    public static final int WEEKS_OF_RACK = 12;

    /** A board, or a piece of a size cut by the dealer, that comes so many weeks after it was ordered. */
    public record Dealt(ForSale board, int weeks) {

        public Dealt {
            if (weeks < 0) {
                throw new IllegalArgumentException(weeks + " weeks");
            }
        }
    }

    /** The least difference in cost that is one. */
    private static final long ONE = 1;

    /**
     * @param counts how many of each offer, in the order given
     * @param service share of the courses served with it
     * @param without the same when nothing is bought
     * @param breakEven for each offer the price at which it would be bought in place of the cheapest order without it; empty
     *     when no order without, or none with it, serves
     * @param rackWeeks for so many weeks the rack alone serves at this level, at most {@value #WEEKS_OF_RACK}
     */
    public record Advice(
            List<Integer> counts,
            long cost,
            double service,
            double without,
            List<OptionalLong> breakEven,
            int rackWeeks) {}

    private final List<Dealt> kinds;
    private final int firstDelivery;
    private final int weeks;
    private final List<OpenBoard> rack;
    private final List<List<List<Wanted>>> courses = new ArrayList<>();
    private final int mayFail;

    private BoardsToBuy(
            List<Dealt> kinds, List<OpenBoard> rack, List<LearnedWorth.Asked> asked, double level, long seed) {
        this.kinds = kinds;
        this.rack = rack;
        this.mayFail = (int) Math.floor((1 - level) * COURSES + 1e-9);
        this.firstDelivery = kinds.stream().mapToInt(Dealt::weeks).min().orElse(0);
        this.weeks = kinds.stream().mapToInt(Dealt::weeks).max().orElse(0) + 1;
        SplittableRandom random = new SplittableRandom(seed);
        for (int c = 0; c < COURSES; c++) {
            courses.add(IntStream.range(0, Math.max(weeks, WEEKS_OF_RACK))
                    .mapToObj(week -> LearnedWorth.week(asked, random))
                    .toList());
        }
    }

    /**
     * @param kinds boards on offer, each as often as wanted
     * @param pieces sizes in the rack
     * @param level share of courses to be served, 0 to 1
     * @return empty when no order up to {@value #MOST_OF_EACH} of each reaches the level
     */
    public static Optional<Advice> advise(
            List<Dealt> kinds, List<Wanted> pieces, List<LearnedWorth.Asked> asked, double level, long seed) {
        List<OpenBoard> rack = IntStream.range(0, pieces.size())
                .mapToObj(i ->
                        new OpenBoard(i, pieces.get(i).width(), pieces.get(i).height()))
                .toList();
        return new BoardsToBuy(kinds, rack, asked, level, seed).advice();
    }

    private Optional<Advice> advice() {
        List<Purchases.Purchase> ways = ways();
        Map<Integer, Boolean> known = new LinkedHashMap<>();
        Optional<Integer> best = cheapest(ways, known, -1, false);
        return best.map(way -> {
            List<OptionalLong> breakEven = IntStream.range(0, kinds.size())
                    .mapToObj(kind -> breakEven(ways, known, way, kind))
                    .toList();
            Purchases.Purchase chosen = ways.get(way);
            return new Advice(
                    counts(chosen),
                    chosen.cost(),
                    1 - failing(chosen, COURSES) / (double) COURSES,
                    1 - failing(ways.getFirst(), COURSES) / (double) COURSES,
                    breakEven,
                    rackWeeks());
        });
    }

    private List<Purchases.Purchase> ways() {
        List<ForSale> all = new ArrayList<>();
        kinds.forEach(kind -> all.addAll(java.util.Collections.nCopies(MOST_OF_EACH, kind.board())));
        return new Purchases(all).ways();
    }

    /** The cheapest way that serves, with at least one of the kind or with none of it; kind -1: any. */
    private Optional<Integer> cheapest(
            List<Purchases.Purchase> ways, Map<Integer, Boolean> known, int kind, boolean with) {
        return IntStream.range(0, ways.size())
                .filter(way -> kind < 0 || counts(ways.get(way)).get(kind) > 0 == with)
                .filter(way -> known.computeIfAbsent(way, w -> failing(ways.get(w), mayFail + 1) <= mayFail))
                .boxed()
                .findFirst();
    }

    /** Where the cheapest order with the kind costs as much as the cheapest without it. */
    private OptionalLong breakEven(List<Purchases.Purchase> ways, Map<Integer, Boolean> known, int best, int kind) {
        Optional<Integer> with =
                counts(ways.get(best)).get(kind) > 0 ? Optional.of(best) : cheapest(ways, known, kind, true);
        Optional<Integer> without =
                counts(ways.get(best)).get(kind) == 0 ? Optional.of(best) : cheapest(ways, known, kind, false);
        if (with.isEmpty() || without.isEmpty()) {
            return OptionalLong.empty();
        }
        long count = counts(ways.get(with.get())).get(kind);
        long others =
                ways.get(with.get()).cost() - count * kinds.get(kind).board().cost();
        long price = Math.floorDiv(ways.get(without.get()).cost() - others, count);
        return price < ONE ? OptionalLong.empty() : OptionalLong.of(price);
    }

    private List<Integer> counts(Purchases.Purchase way) {
        int[] counts = new int[kinds.size()];
        way.offers().forEach(offer -> counts[offer / MOST_OF_EACH]++);
        return Arrays.stream(counts).boxed().toList();
    }

    /** In how many courses somebody stands without a board; counted no further than needed. */
    private int failing(Purchases.Purchase way, int enough) {
        int failing = 0;
        for (List<List<Wanted>> course : courses) {
            if (!serves(way, course) && ++failing >= enough) {
                return failing;
            }
        }
        return failing;
    }

    private boolean serves(Purchases.Purchase way, List<List<Wanted>> course) {
        List<OpenBoard> boards = Laying.copy(rack);
        long free = boards.stream().mapToLong(OpenBoard::freeArea).sum() + way.area();
        if (area(course) > free) {
            return false;
        }
        List<Wanted> waiting = new ArrayList<>();
        for (int week = 0; week < weeks; week++) {
            for (int offer : way.offers()) {
                Dealt kind = kinds.get(offer / MOST_OF_EACH);
                if (kind.weeks() == week) {
                    boards.add(new OpenBoard(
                            1_000 + offer, kind.board().width(), kind.board().height()));
                }
            }
            waiting.addAll(course.get(week));
            List<Integer> without = new ArrayList<>();
            Laying.lay(boards, waiting, BlankOrder.AREA.of(waiting), PlaceRule.FULLEST_BOARD, true, without);
            if (!without.isEmpty() && week >= firstDelivery) {
                return false;
            }
            waiting = new ArrayList<>(without.stream().map(waiting::get).toList());
        }
        return true;
    }

    private long area(List<List<Wanted>> course) {
        return course.subList(0, weeks).stream()
                .flatMap(List::stream)
                .mapToLong(Wanted::area)
                .sum();
    }

    /** The first week in which the rack alone fails more courses than may. */
    private int rackWeeks() {
        int[] lasts = courses.stream().mapToInt(this::lasts).sorted().toArray();
        return lasts[Math.min(mayFail, lasts.length - 1)];
    }

    private int lasts(List<List<Wanted>> course) {
        List<OpenBoard> boards = Laying.copy(rack);
        for (int week = 0; week < WEEKS_OF_RACK; week++) {
            List<Wanted> asked = course.get(week);
            if (Laying.lay(boards, asked, BlankOrder.AREA.of(asked), PlaceRule.FULLEST_BOARD, true, null) == null) {
                return week;
            }
        }
        return WEEKS_OF_RACK;
    }
}
