package puzzleworkshop.geometry.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Size;

/**
 * Among many boards the ones that lose the least value by giving a blank, each with its best place.
 *
 * <p>Best first: what a board loses at least is known from its area and rung (its value less the most its remainder
 * could be worth). Boards are searched in the order of this bound, and the search ends when the bound of the next one is
 * not below the loss of the last one wanted. So the answer is the same as if every board were searched.
 */
public final class BestSheets {

    private static final int TOGETHER = 32;

    /**
     * A board's answer.
     *
     * @param index of the board in the list that was given
     * @param place where the blank lies
     * @param valueLost value of the board less value of what remains, mm² of best board
     * @param rung that the remainder stands on
     */
    public record Ranked(int index, Placement place, Area valueLost, int rung) {}

    private static final Comparator<Ranked> BY_LOSS = Comparator.comparingDouble(
                    (Ranked ranked) -> ranked.valueLost().mm2())
            .thenComparing(Ranked::index);

    private record Bound(int index, double leastLoss) {}

    private BestSheets() {}

    /**
     * @param allowed the angles allowed on each board, as degrees; null in place of an array: any angle
     * @param wanted how many answers, best first; fewer when fewer boards hold the blank
     */
    public static List<Ranked> rank(
            List<Profile> boards, Size blank, List<double[]> allowed, UsefulSizes sizes, int wanted) {
        PriorityQueue<Bound> bounds = bounds(boards, blank, allowed, sizes);
        List<Ranked> found = new ArrayList<>();
        while (!bounds.isEmpty()
                && !(found.size() >= wanted
                        && bounds.peek().leastLoss()
                                >= found.get(wanted - 1).valueLost().mm2())) {
            List<Bound> next = new ArrayList<>();
            while (next.size() < TOGETHER && !bounds.isEmpty()) {
                next.add(bounds.poll());
            }
            found.addAll(next.parallelStream()
                    .map(bound -> answer(boards, blank, allowed, sizes, bound.index()))
                    .flatMap(Optional::stream)
                    .toList());
            found.sort(BY_LOSS);
        }
        return IntStream.range(0, Math.min(wanted, found.size()))
                .mapToObj(found::get)
                .toList();
    }

    /**
     * The same, one board after the other, for a stock that is used up meanwhile: what was found out about a board is not
     * found out again, and no more boards are searched than the next answer asks for.
     */
    public static final class Ranking {

        private final List<Profile> boards;
        private final Size blank;
        private final List<double[]> allowed;
        private final UsefulSizes sizes;
        private final PriorityQueue<Bound> bounds;
        private final List<Ranked> found = new ArrayList<>();

        public Ranking(List<Profile> boards, Size blank, List<double[]> allowed, UsefulSizes sizes) {
            this.boards = boards;
            this.blank = blank;
            this.allowed = allowed;
            this.sizes = sizes;
            this.bounds = bounds(boards, blank, allowed, sizes);
        }

        /** The best of the boards that are still there; one that is gone must never come back. */
        public Optional<Ranked> best(IntPredicate isThere) {
            found.removeIf(ranked -> !isThere.test(ranked.index()));
            while (!bounds.isEmpty()
                    && (found.isEmpty()
                            || bounds.peek().leastLoss()
                                    < found.getFirst().valueLost().mm2())) {
                List<Bound> next = new ArrayList<>();
                while (next.size() < TOGETHER && !bounds.isEmpty()) {
                    Bound bound = bounds.poll();
                    if (isThere.test(bound.index())) {
                        next.add(bound);
                    }
                }
                found.addAll(next.parallelStream()
                        .map(bound -> answer(boards, blank, allowed, sizes, bound.index()))
                        .flatMap(Optional::stream)
                        .toList());
                found.sort(BY_LOSS);
            }
            return found.stream().findFirst();
        }
    }

    private static PriorityQueue<Bound> bounds(
            List<Profile> boards, Size blank, List<double[]> allowed, UsefulSizes sizes) {
        double w = blank.width().mm();
        double h = blank.height().mm();
        PriorityQueue<Bound> bounds =
                new PriorityQueue<>(Comparator.comparingDouble(Bound::leastLoss).thenComparing(Bound::index));
        for (int i = 0; i < boards.size(); i++) {
            Profile board = boards.get(i);
            if (board.mayHold(w, h)) {
                double[] angles = allowed == null ? null : allowed.get(i);
                double most = new BestPlace(board, blank, angles, sizes).mostRemainderValue();
                bounds.add(new Bound(i, board.value - most));
            }
        }
        return bounds;
    }

    private static Optional<Ranked> answer(
            List<Profile> boards, Size blank, List<double[]> allowed, UsefulSizes sizes, int index) {
        Profile board = boards.get(index);
        double[] angles = allowed == null ? null : allowed.get(index);
        return new BestPlace(board, blank, angles, sizes)
                .anyBest()
                .map(best -> new Ranked(
                        index,
                        best.placement(),
                        Area.mm2(Math.max(0, board.value - best.remainderValue().mm2())),
                        best.rung()));
    }

    /** The rung that the remainder stands on when the blank is cut there; the place must be inside. */
    public static int rungLeft(Profile board, Size blank, Placement place, UsefulSizes sizes) {
        return new BestPlace(board, blank, null, sizes).rungLeftBy(place);
    }

    /** The highest rung the remainder could stand on by area alone. */
    public static int mostRungLeft(Profile board, Size blank, UsefulSizes sizes) {
        return Math.min(board.rung, sizes.highestFor(board.area - blank.area().mm2()));
    }

    /** Whether a board holds the rectangle at some angle. */
    public static boolean holds(Profile board, Size blank) {
        return new BestPlace(board, blank, null, null).fits();
    }

    /** The finest place on one board: of equally valued ones the one that leaves the largest rectangle. */
    public static Optional<Ranked> finest(Profile board, Size blank, double[] allowed, UsefulSizes sizes) {
        return new BestPlace(board, blank, allowed, sizes)
                .best()
                .map(best -> new Ranked(
                        0,
                        best.placement(),
                        Area.mm2(Math.max(0, board.value - best.remainderValue().mm2())),
                        best.rung()));
    }
}
