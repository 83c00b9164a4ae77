package puzzleworkshop.wood.ahead;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import puzzleworkshop.wood.ahead.buying.BlankOrder;
import puzzleworkshop.wood.ahead.buying.CheapestOrder;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;

/**
 * Which boards to order so that the weeks until the order after that can come are served: the cheapest order with which the
 * share of drawn courses in which every blank has a board reaches the service level (sample average approximation of a
 * chance constraint: Luedtke and Ahmed, SIAM Journal on Optimization 19, 2008). Seeded: the same question, the same order.
 *
 * <p>What is ordered comes after its dealer's weeks and serves until what the slowest of them brings a week later. Blanks that no
 * board in the rack holds before the first delivery wait for it; after that none may stand without a board. What waits for a
 * board already is asked for in the first week; what was ordered before comes in its week.
 */
public final class BoardsToBuy {

    private static final int COURSES = 100;

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

    /** What there is before anything is ordered. */
    public record Stock(List<Wanted> pieces, List<OnTheWay> onTheWay, List<Wanted> waiting) {

        public Stock {
            pieces = List.copyOf(pieces);
            onTheWay = List.copyOf(onTheWay);
            waiting = List.copyOf(waiting);
        }

        /** A rack of these pieces alone. */
        public static Stock of(List<Wanted> pieces) {
            return new Stock(pieces, List.of(), List.of());
        }
    }

    /** A board ordered before that comes in so many weeks. */
    public record OnTheWay(Wanted board, int weeks) {}

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
    private final Stock stock;
    private final List<OpenBoard> rack;
    private final List<List<List<Wanted>>> courses = new ArrayList<>();
    private final int mayFail;
    private final long before;
    private final CheapestOrder search;

    private BoardsToBuy(List<Dealt> kinds, Stock stock, List<LearnedWorth.Asked> asked, double level, long seed) {
        this.kinds = kinds;
        this.stock = stock;
        this.rack = LearnedWorth.rack(stock.pieces());
        this.mayFail = (int) Math.floor((1 - level) * COURSES + 1e-9);
        this.firstDelivery = kinds.stream().mapToInt(Dealt::weeks).min().orElse(0);
        this.weeks = kinds.stream().mapToInt(Dealt::weeks).max().orElse(0) + 1;
        this.before = before();
        SplittableRandom random = new SplittableRandom(seed);
        for (int c = 0; c < COURSES; c++) {
            courses.add(IntStream.range(0, Math.max(weeks, WEEKS_OF_RACK))
                    .mapToObj(week -> LearnedWorth.week(asked, week, random))
                    .toList());
        }
        // the courses that ask for most fail first, so that an order too small is refused quickly
        courses.sort(Comparator.comparingLong(this::area).reversed());
        search = new CheapestOrder(
                kinds.stream().map(Dealt::board).toList(),
                area(courses.get(Math.min(mayFail, COURSES - 1))) - before,
                order -> failing(order, mayFail + 1) <= mayFail);
    }

    /**
     * @param kinds boards on offer, each as often as wanted
     * @param level share of courses to be served, 0 to 1
     * @return empty when no order up to {@value CheapestOrder#MOST_BOARDS} boards reaches the level
     */
    public static Optional<Advice> advise(
            List<Dealt> kinds, Stock stock, List<LearnedWorth.Asked> asked, double level, long seed) {
        return new BoardsToBuy(kinds, stock, asked, level, seed).advice();
    }

    private Optional<Advice> advice() {
        return search.cheapest().map(best -> {
            List<OptionalLong> breakEven = IntStream.range(0, kinds.size())
                    .mapToObj(kind -> breakEven(best, kind))
                    .toList();
            return new Advice(
                    Arrays.stream(best).boxed().toList(),
                    search.cost(best),
                    1 - failing(best, COURSES) / (double) COURSES,
                    1 - failing(new int[kinds.size()], COURSES) / (double) COURSES,
                    breakEven,
                    rackWeeks());
        });
    }

    /** Where the cheapest order with the kind costs as much as the cheapest without it. */
    private OptionalLong breakEven(int[] best, int kind) {
        Optional<int[]> with = best[kind] > 0 ? Optional.of(best) : search.with(kind);
        Optional<int[]> without = best[kind] == 0 ? Optional.of(best) : search.without(kind);
        if (with.isEmpty() || without.isEmpty()) {
            return OptionalLong.empty();
        }
        long count = with.get()[kind];
        long others = search.cost(with.get()) - count * kinds.get(kind).board().cost();
        long price = Math.floorDiv(search.cost(without.get()) - others, count);
        return price < ONE ? OptionalLong.empty() : OptionalLong.of(price);
    }

    /** In how many courses somebody stands without a board; counted no further than needed. */
    private int failing(int[] order, int enough) {
        int failing = 0;
        for (List<List<Wanted>> course : courses) {
            if (!serves(order, course) && ++failing >= enough) {
                return failing;
            }
        }
        return failing;
    }

    private boolean serves(int[] order, List<List<Wanted>> course) {
        if (area(course) > before + search.area(order)) {
            return false;
        }
        List<OpenBoard> boards = Laying.copy(rack);
        List<Wanted> waiting = new ArrayList<>(stock.waiting());
        for (int week = 0; week < weeks; week++) {
            come(boards, week);
            for (int kind = 0; kind < order.length; kind++) {
                Dealt dealt = kinds.get(kind);
                for (int i = 0; i < order[kind] && dealt.weeks() == week; i++) {
                    boards.add(new OpenBoard(
                            boards.size(), dealt.board().width(), dealt.board().height()));
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

    private void come(List<OpenBoard> boards, int week) {
        stock.onTheWay().stream()
                .filter(coming -> coming.weeks() == week)
                .map(OnTheWay::board)
                .forEach(board -> boards.add(new OpenBoard(boards.size(), board.width(), board.height())));
    }

    /** What is there or comes in time before anything is ordered. */
    private long before() {
        return Stream.concat(
                        stock.pieces().stream(),
                        stock.onTheWay().stream()
                                .filter(coming -> coming.weeks() < weeks)
                                .map(OnTheWay::board))
                .mapToLong(Wanted::area)
                .sum();
    }

    /** What waits and what the course asks for until the next order could come. */
    private long area(List<List<Wanted>> course) {
        return Stream.concat(
                        stock.waiting().stream(),
                        course.subList(0, weeks).stream().flatMap(List::stream))
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
            come(boards, week);
            List<Wanted> asked = new ArrayList<>(week == 0 ? stock.waiting() : List.of());
            asked.addAll(course.get(week));
            if (Laying.lay(boards, asked, BlankOrder.AREA.of(asked), PlaceRule.FULLEST_BOARD, true, null) == null) {
                return week;
            }
        }
        return WEEKS_OF_RACK;
    }
}
