package puzzleworkshop.geometry.assign;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * Which boards give many blanks together, so that first the least new board is bought and then the least value lost.
 *
 * <p>Start: every blank in the order it came takes the board that loses least (what a person does), and the same with
 * the largest first. The better of the two is improved by {@link AssignmentSearch}, so the answer is never worse than
 * first come, first served. A board may give several blanks: each is cut from what the others leave of it.
 *
 * <p>The work is bounded by rounds, so the same question gets the same answer; the time given only ends it early, on a
 * machine that is slow or busy.
 */
public final class BoardAssignment {

    private static final int CHAINS = 2;
    private static final int ROUNDS = 4_000;

    /** One blank's answer: the board (from {@code boards.size()} on a new one) and the place on it. */
    public record Placed(int blank, int board, Placement place) {}

    /**
     * @param placed the blanks that have a board, in the order given
     * @param unplaced blanks that no board, not even a new one, can hold
     * @param newBoards for each new board its index among the kinds offered; board number {@code boards.size() + k} is
     *     the k-th of these
     */
    public record Plan(
            List<Placed> placed, List<Integer> unplaced, List<Integer> newBoards, Area newArea, Area valueLost) {

        public Plan {
            placed = List.copyOf(placed);
            unplaced = List.copyOf(unplaced);
            newBoards = List.copyOf(newBoards);
        }

        boolean isBetterThan(Plan other) {
            int missing = Integer.compare(unplaced.size(), other.unplaced.size());
            int bought = Double.compare(newArea.mm2(), other.newArea.mm2());
            return missing != 0
                    ? missing < 0
                    : Math.abs(newArea.mm2() - other.newArea.mm2()) > 1e-6
                            ? bought < 0
                            : valueLost.mm2() < other.valueLost.mm2() - 1e-6;
        }
    }

    private final CutBoards cut;
    private final AssignmentSearch search;
    private final Supplier<AssignmentBound> newBound;
    private AssignmentBound bound;
    private final int blanks;
    private AssignmentSearch.Draft firstCome;

    /**
     * @param boards the stock
     * @param kinds new boards that can be bought, any number of each
     * @param kerf width of the cut, lost around each blank
     * @param angles for a blank and a board (a kind from {@code boards.size()} on): null for any angle, an empty array when
     *     the board may not be used for the blank, else the angles allowed
     */
    public BoardAssignment(
            List<Profile> boards,
            List<Profile> kinds,
            List<Size> blanks,
            UsefulSizes sizes,
            Length kerf,
            BiFunction<Integer, Integer, double[]> angles) {
        this.blanks = blanks.size();
        int stock = boards.size();
        List<Profile> all = Stream.concat(boards.stream(), kinds.stream()).toList();
        this.cut = new CutBoards(all, List.copyOf(blanks), sizes, kerf, angles);
        boolean[][] holds = new boolean[blanks.size()][];
        int[] distinct = IntStream.range(0, blanks.size())
                .filter(b -> cut.sameAs(b) == b)
                .toArray();
        Arrays.stream(distinct).parallel().forEach(blank -> {
            holds[blank] = new boolean[all.size()];
            for (int board = 0; board < all.size(); board++) {
                holds[blank][board] = cut.mayHold(blank, board);
            }
        });
        int[][] candidates = new int[blanks.size()][];
        int[][] newKinds = new int[blanks.size()][];
        for (int blank = 0; blank < blanks.size(); blank++) {
            boolean[] these = holds[cut.sameAs(blank)];
            holds[blank] = these;
            double area = blanks.get(blank).area().mm2();
            candidates[blank] = sorted(0, stock, these, board -> cut.leastLoss(board, area));
            newKinds[blank] = sorted(stock, all.size(), these, cut::area);
        }
        this.search = new AssignmentSearch(cut, List.copyOf(blanks), stock, candidates, newKinds);
        this.newBound = () -> new AssignmentBound(cut, List.copyOf(blanks), stock, holds);
    }

    private static int[] sorted(int from, int to, boolean[] which, ToDoubleFunction<Integer> order) {
        return IntStream.range(from, to)
                .filter(board -> which[board])
                .boxed()
                .sorted(Comparator.comparingDouble(order))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** First come, first served, each the board that loses least then. */
    public Plan firstCome() {
        return firstComeDraft().plan();
    }

    private AssignmentSearch.Draft firstComeDraft() {
        if (firstCome == null) {
            firstCome = search.inOrder(IntStream.range(0, blanks).boxed().toList(), () -> false);
        }
        return firstCome;
    }

    /** The best found, never worse than {@link #firstCome()}; the time ends it early. */
    public Plan together(long millis, long seed) {
        long end = System.nanoTime() + millis * 1_000_000;
        AssignmentSearch.Draft start = firstComeDraft();
        if (blanks < 2 || System.nanoTime() > end) {
            return start.plan();
        }
        BooleanSupplier late = () -> System.nanoTime() > end;
        AssignmentSearch.Draft other = search.inOrder(search.largestFirst(), late);
        AssignmentSearch.Draft better = other != null && other.cost() < start.cost() ? other : start;
        return IntStream.range(0, CHAINS)
                .parallel()
                .mapToObj(chain -> search.improve(better, ROUNDS, seed * CHAINS + chain, late))
                .reduce((one, two) -> two.cost() < one.cost() - 1e-6 ? two : one)
                .orElseThrow()
                .plan();
    }

    /** No plan for the blanks that can be placed buys less new board, when rectangular boards are cut along their edges. */
    public Area leastNewArea() {
        return bound().leastNewArea();
    }

    /**
     * No plan for the blanks that can be placed loses less value, if it buys no more new boards than this one and cuts
     * rectangular boards along their edges.
     */
    public Area leastValueLost(Plan plan) {
        return bound().leastValueLost(plan.newBoards().size(), plan.valueLost());
    }

    /** Made when it is first asked for: the plan need not wait for it. */
    private synchronized AssignmentBound bound() {
        if (bound == null) {
            bound = newBound.get();
        }
        return bound;
    }
}
